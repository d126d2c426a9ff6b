package fasten

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// A Kind is a kind of dowel-type fastener. The zero Kind is none.
type Kind int

// The kinds of fastener. A RingNail has rings on its shank.
const (
	Bolt Kind = iota + 1
	LagScrew
	WoodScrew
	Nail
	RingNail
)

// String returns the kind in words.
func (k Kind) String() string {
	switch k {
	case Bolt:
		return "bolt"
	case LagScrew:
		return "lag screw"
	case WoodScrew:
		return "wood screw"
	case Nail:
		return "nail"
	case RingNail:
		return "ring shank nail"
	}
	return "no fastener"
}

// nail reports whether the kind is driven with a hammer.
func (k Kind) nail() bool { return k == Nail || k == RingNail }

// A Fastener is one bolt, screw or nail. [Lookup] fills it from the standard's
// tables; a measured one is written as it is. What is 0 is looked up or follows
// the standard's rule, where there is one, and is unknown otherwise.
type Fastener struct {
	Kind     Kind
	Name     string  // "1/2 bolt"
	Diameter float64 // nominal, m
	Root     float64 // root of the thread, m; 0: a nail's diameter, else by the table
	Length   float64 // from under the head to the point, m; a head that is countersunk counts
	Head     float64 // diameter of the head, m
	Thread   float64 // length of the thread with the point, m; 0: by the standard
	Tip      float64 // length of the tapered point, m; 0: 2D, for lag screws by the table
	Yield    float64 // bending yield strength, Pa; 0: the class value for the nominal diameter
	Hardened bool    // of a nail: hardened steel, for the class value
	Source   *measure.Source
}

// String returns the name, or the kind and diameter, with the length if known.
func (f Fastener) String() string {
	s := f.Name
	if s == "" {
		s = measure.FeetInches(f.Diameter, 64) + " " + f.Kind.String()
	}
	if f.Length > 0 {
		s += ", " + measure.FeetInches(f.Length, 16) + " long"
	}
	return s
}

// steel is a fastener with everything known, in inches and psi.
type steel struct {
	kind                            Kind
	d, root, length, head, tip, fyb float64
	thread                          float64 // with the point
	threaded                        bool
}

// resolve fills in what the tables and rules know.
func (f Fastener) resolve() (steel, error) {
	var s steel
	if f.Kind < Bolt || f.Kind > RingNail {
		return s, &measure.Error{Field: "Kind", Text: f.Kind.String(), Class: measure.ErrName, Want: "Bolt, LagScrew, WoodScrew, Nail or RingNail"}
	}
	most := measure.Range{Kind: measure.Length, Hi: 1.25 * measure.Inch * (1 + 1e-9), OpenLo: true, Source: nds("Tables 12.2A and L2", measure.Quoted)}
	small := measure.Range{Kind: measure.Length, Hi: f.Diameter * (1 + 1e-9)}
	part := measure.Range{Kind: measure.Length, Hi: f.Length * (1 + 1e-9)}
	if !(f.Length > 0) {
		part.Hi = lengths.Hi
	}
	if err := checkAll(
		ranged{"Diameter", f.Diameter, most},
		ranged{"Root", f.Root, small},
		ranged{"Length", f.Length, distances},
		ranged{"Head", f.Head, measure.Range{Kind: measure.Length, Hi: 6 * most.Hi}},
		ranged{"Thread", f.Thread, part},
		ranged{"Tip", f.Tip, part},
		ranged{"Yield", f.Yield, measure.Range{Kind: measure.Stress, Hi: 2e9}},
	); err != nil {
		return s, err
	}
	s = steel{
		kind: f.Kind, d: inches(f.Diameter), root: inches(f.Root), length: inches(f.Length),
		head: inches(f.Head), tip: inches(f.Tip), thread: inches(f.Thread), fyb: psis(f.Yield),
		threaded: !f.Kind.nail(),
	}
	t, err := loaded()
	if err != nil {
		return s, err
	}
	same := t.like(f.Kind, s.d)
	if s.root == 0 {
		switch {
		case f.Kind.nail():
			s.root = s.d
		case same != nil:
			s.root = inches(same.Root)
		default:
			return s, unknown("Root", "the root diameter of the thread: no table lists this diameter")
		}
	}
	switch {
	case s.tip > 0 || f.Kind == Bolt:
	case f.Kind != LagScrew:
		s.tip = 2 * s.d
	case same != nil:
		s.tip = inches(same.Tip)
	default:
		return s, unknown("Tip", "the length of the lag screw's point: no table lists this diameter")
	}
	if s.fyb == 0 {
		if s.fyb = t.class(f.Kind, f.Hardened, s.d); !(s.fyb > 0) {
			return s, unknown("Yield", "the bending yield strength: Appendix I has no class for this diameter")
		}
	}
	if s.thread == 0 && s.length > 0 {
		s.thread = s.ruled()
	}
	return s, nil
}

// ruled returns the length of thread, with the point, that the standard gives
// an unnamed fastener: bolts 2D + 1/4 in, beyond 6 in of length 2D + 1/2 in; lag
// screws half the length and 1/2 in, at most 6 in (ASME B18.2.1, from memory;
// NDS Table L2); wood screws two thirds of the length, 4D at least (NDS Table L3).
// Nails grip with the whole shank.
func (s steel) ruled() float64 {
	t := s.length
	switch {
	case s.kind == Bolt && s.length <= 6:
		t = 2*s.d + 0.25
	case s.kind == Bolt:
		t = 2*s.d + 0.5
	case s.kind == LagScrew:
		t = math.Min(s.length/2+0.5, 6)
	case s.kind == WoodScrew:
		t = math.Max(s.length*2/3, 4*s.d)
	}
	return math.Min(t, s.length)
}

// Withdrawal returns the reference withdrawal design value, N per metre of
// thread (nails: of shank) in the side grain of wood of specific gravity g, 0.31
// to 0.73:
//
//	lag screw   1800 G^1.5 D^0.75 lbf/in, point left out
//	wood screw  2850 G² D
//	nail        1380 G^2.5 D; ring shank 1800 G² D
//
// with D in inches. Bolts do not grip the wood: an error. NDS 12.2. Within 2.3 units
// in the last place.
// Worst at (0.5717, 0.5596), ordered as in testdata/accuracy.csv.
func (f Fastener) Withdrawal(g float64) (float64, error) {
	s, err := f.resolve()
	if err != nil {
		return 0, err
	}
	if err := gravities.Check("specific gravity", g); err != nil {
		return 0, err
	}
	w, _, err := s.withdrawal(g)
	return w * measure.PoundForce / measure.Inch, err
}

// withdrawal is Withdrawal in lbf/in, with its source.
func (s steel) withdrawal(g float64) (float64, *measure.Source, error) {
	switch s.kind {
	case LagScrew:
		return 1800 * math.Pow(g, 1.5) * math.Pow(s.d, 0.75), srcLagPull, nil
	case WoodScrew:
		return 2850 * g * g * s.d, srcScrewPull, nil
	case Nail:
		return 1380 * math.Pow(g, 2.5) * s.d, srcNailPull, nil
	case RingNail:
		return 1800 * g * g * s.d, srcRingPull, nil
	}
	return 0, nil, &measure.Error{Field: "Kind", Text: s.kind.String(), Class: measure.ErrName, Want: "a screw or nail: a bolt holds by its washers"}
}

// PullThrough returns the reference value, N, at which a round head of a diameter
// (m) pulls through wood of a thickness (m) and specific gravity g, 0.31 to 0.73:
//
//	690 π DH G² t lbf,  t at most 2.5 DH
//
// and no more for thicker wood, with inches. NDS Table 12.2F. Within 2.9 units in
// the last place.
// Worst at (0.007358, 0.05925, 0.698), ordered as in testdata/accuracy.csv.
func PullThrough(head, thickness, g float64) (float64, error) {
	if err := checkAll(
		ranged{"head", head, measure.Range{Kind: measure.Length, Hi: 0.2, OpenLo: true}},
		ranged{"thickness", thickness, lengths},
		ranged{"specific gravity", g, gravities},
	); err != nil {
		return 0, err
	}
	h := inches(head)
	return 690 * math.Pi * h * g * g * math.Min(inches(thickness), 2.5*h) * measure.PoundForce, nil
}
