package fasten

import (
	"fmt"
	"math"

	"example.org/floewright/lumber/measure"
)

// A Place is one kind of joint in the dock, as the hardware schedule takes it.
type Place struct {
	Name     string
	Joint    Joint
	Alike    int    // how many such joints; 0 is 1
	Finish   string // of fastener, nut and washers alike, as [Finishes] names it
	Compound bool   // a plain nut with thread-locking compound in place of a lock nut: counts nothing
}

// A Drill is one hole to bore: the size to take, and what the rule allows. Depths
// and sizes in m.
type Drill struct {
	What     string
	Size     float64
	From, To float64
	Source   *measure.Source
}

// A Row is one line of the hardware schedule.
type Row struct {
	Place    string
	Fastener string  // "1/2 bolt, 5 in long"
	Length   float64 // m, as given, or the shortest stock length that reaches
	Needed   float64 // of a bolt, m: grip, two washers, nut, two threads
	Grip     float64 // m
	Count    int     // fasteners in all places alike, without spares
	Washers  int     // with each
	Tail     string  // of a bolt: which way its tail points
	Drills   []Drill
	Checks   []measure.Check
	Notes    []string
}

// An Item is one line of the list to buy, spares counted.
type Item struct {
	What  string
	Count int
}

var (
	srcNeeded = practice("Bolt length: grip, two washers, nut and two threads beyond it")
	srcStock  = practice("Stock lengths of hex bolts: half inches to 6 in, inches to 24 in")
	srcNut    = practice("Bolts drawn up snug with lock nuts; compound wets, rots and lets go")
	srcHole   = nds("12.1.3.2, hole 1/32 to 1/16 in over the bolt", measure.Quoted)
	srcLead   = nds("12.1.4.2, lead holes of lag screws", measure.Memory)
	srcScrew  = nds("12.1.5, lead holes of wood screws", measure.Memory)
	srcBore   = nds("12.1.6, bored holes of nails", measure.Memory)
	srcWashed = nds("12.1.3.3, washer or plate under head and nut", measure.Quoted)
)

// stock returns the shortest stock length of a bolt, inches, that reaches; 0
// where none does.
func stock(needed float64) float64 {
	l := math.Ceil(2*needed-hair) / 2
	if l > 6 {
		l = math.Ceil(needed - hair)
	}
	if l > 24 {
		return 0
	}
	return math.Max(l, 1)
}

// row works out one place.
func (p Place) row(e Exposure) (Row, part, error) {
	j := p.Joint
	r := Row{Place: p.Name, Count: max(p.Alike, 1) * j.count(), Length: j.Fastener.Length}
	if err := (measure.Range{Kind: measure.Ratio, Hi: 1e5}).Check("Alike", float64(p.Alike)); err != nil {
		return r, part{}, err
	}
	if err := j.check(); err != nil {
		return r, part{}, err
	}
	s, err := j.Fastener.resolve()
	if err != nil {
		return r, part{}, err
	}
	t, err := loaded()
	if err != nil {
		return r, part{}, err
	}
	var goes part
	if s.kind == Bolt || s.kind == LagScrew {
		if goes, err = t.part(s.d); err != nil {
			return r, goes, err
		}
	}
	r.Grip = j.Main.Thickness + j.Side.Thickness + j.Gap
	if j.Double {
		r.Grip += j.Side.Thickness + j.Gap
	}
	switch s.kind {
	case Bolt:
		if err := p.bolt(&r, s, goes); err != nil {
			return r, goes, err
		}
	case LagScrew:
		r.Washers = 1
	}
	if s.kind != Bolt && r.Length == 0 {
		return r, goes, unknown(p.Name+": Length", "the length of the "+s.kind.String())
	}
	f := j.Fastener
	f.Length = r.Length
	r.Fastener = f.String()
	r.Drills = j.drills(s)
	parts := []Metal{{Part: s.kind.String(), Finish: p.Finish, Nail: s.kind.nail()}}
	if r.Washers > 0 {
		parts = append(parts, Metal{Part: "washer", Finish: p.Finish})
	}
	if s.kind == Bolt {
		parts = append(parts, Metal{Part: "nut", Finish: p.Finish})
	}
	checks, err := e.Check(parts...)
	if err != nil {
		return r, goes, err
	}
	r.Checks = append(r.Checks, checks...)
	if j.Loose {
		r.Notes = append(r.Notes, "a loose joint hammers and wears: draw it up snug; movement belongs in a hinge pin")
	}
	return r, goes, nil
}

// bolt fills in what only bolts have.
func (p Place) bolt(r *Row, s steel, goes part) error {
	j := p.Joint
	r.Washers = 2
	needed := inches(r.Grip) + 2*goes.thick + goes.locknut + 2*goes.pitch
	if p.Compound {
		needed += goes.nut - goes.locknut
	}
	if j.Main.Material == Concrete {
		return &measure.Error{Field: p.Name, Why: "anchors in concrete come in lengths of their own", Class: measure.ErrNotComputed}
	}
	r.Needed = needed * measure.Inch
	if r.Length == 0 {
		l := stock(needed)
		if l == 0 {
			return measure.Range{Kind: measure.Length, Hi: 24 * measure.Inch, Source: srcStock}.Check(p.Name+": length of the bolt", r.Needed)
		}
		r.Length = l * measure.Inch
		j.Fastener.Length = r.Length
		if g, err := j.sit(); err == nil {
			r.Notes = append(r.Notes, "for its strength: "+g.bodySource)
		}
	}
	r.Checks = append(r.Checks,
		measure.Check{Name: "bolt long enough", Kind: measure.Length, Value: r.Length, Limit: r.Needed, AtLeast: true, Rule: srcNeeded},
		measure.Check{Name: "washers under head and nut", Kind: measure.Count, Value: float64(r.Washers), Limit: 2, AtLeast: true, Rule: srcWashed},
		p.kept(),
	)
	if over := r.Length - r.Needed; over > measure.Inch {
		r.Notes = append(r.Notes, "tail sticks out "+measure.FeetInches(over+2*goes.pitch*measure.Inch, 16)+": cut it off and coat the cut")
	}
	switch {
	case j.DrumAtMain && j.DrumAtSide:
		r.Tail = "drums on both sides: turn the tail to the farther one and cap it"
	case j.DrumAtMain:
		r.Tail = "off the drum: head at the main piece, nut at the side piece"
	case j.DrumAtSide:
		r.Tail = "off the drum: head at the side piece, nut at the main piece"
	default:
		r.Tail = "no drum named at this joint: never toward a drum or bathers' legs"
	}
	return nil
}

// kept checks that something keeps the nut from turning.
func (p Place) kept() measure.Check {
	c := measure.Check{Name: "nut kept from working loose", Kind: measure.Count, Value: 1, Limit: 1, AtLeast: true, Steps: []string{"no", "yes"}, Rule: srcNut}
	if p.Compound {
		c.Value = 0
		c.Notes = append(c.Notes, "thread-locking compound gets no credit in wet, moving joints: lock nuts, drawn up snug")
	}
	return c
}

// drills lists the holes of a joint's fastener.
func (j Joint) drills(s steel) []Drill {
	in := measure.Inch
	size := func(what string, pick, from, to float64, src *measure.Source) Drill {
		return Drill{what, math.Round(pick*64) / 64 * in, from * in, to * in, src}
	}
	g := j.densest()
	switch {
	case s.kind == Bolt:
		return []Drill{size("through hole", s.d+1.0/16, s.d+1.0/32, s.d+1.0/16, srcHole)}
	case s.kind == LagScrew:
		lo, hi := 0.40, 0.70
		if g > 0.6 {
			lo, hi = 0.65, 0.85
		} else if g > 0.5 {
			lo, hi = 0.60, 0.75
		}
		return []Drill{
			size("clearance for the shank, as deep as the shank", s.d, s.d, s.d, srcLead),
			size("lead hole for the thread", (lo+hi)/2*s.d, lo*s.d, hi*s.d, srcLead),
		}
	case s.kind == WoodScrew && g > 0.6:
		return []Drill{size("lead hole", 0.9*s.root, 0.9*s.root, 0.9*s.root, srcScrew)}
	case s.kind == WoodScrew && g > 0.5:
		return []Drill{size("lead hole", 0.7*s.root, 0.7*s.root, 0.7*s.root, srcScrew)}
	case s.kind == WoodScrew:
		return []Drill{size("lead hole, where ends would split", 0.7*s.root, 0, 0.7*s.root, srcScrew)}
	case g > 0.6:
		return []Drill{size("lead hole, where ends would split", 0.9*s.d, 0, 0.9*s.d, srcBore)}
	}
	return []Drill{size("lead hole, where ends would split", 0.75*s.d, 0, 0.75*s.d, srcBore)}
}

// densest returns the greatest specific gravity of the joint's wood.
func (j Joint) densest() float64 {
	g := 0.0
	for _, p := range j.pieces() {
		if p.Material == Wood {
			g = math.Max(g, p.Grade.G.SI())
		}
	}
	return g
}

// spare returns a count with a tenth added, two at least: our choice, for what
// falls through the ice.
func spare(n int) int { return n + max(2, (n+9)/10) }

// Schedule returns the hardware of a dock, a row for each place, and the list to
// buy: fasteners, nuts and washers of one finish, a tenth more and two at least
// as spares (common practice). Bolts without a length get the shortest stock length that takes
// grip, two washers, a lock nut and two threads. Each row carries its checks:
// length, washers, the nut's keeper, the finish in the exposure.
func Schedule(places []Place, e Exposure) ([]Row, []Item, error) {
	var rows []Row
	var buy list
	for i, p := range places {
		if p.Name == "" {
			p.Name = fmt.Sprintf("place %d", i+1)
		}
		r, goes, err := p.row(e)
		if err != nil {
			return nil, nil, fmt.Errorf("%s: %w", p.Name, err)
		}
		rows = append(rows, r)
		coat := ", finish not known"
		if f, err := finish(p.Finish); err == nil {
			coat = ", " + f.Name
		}
		buy.add(r.Fastener+coat, r.Count)
		size := measure.FeetInches(goes.d*measure.Inch, 16)
		if p.Joint.Fastener.Kind == Bolt {
			nut := "lock nut "
			if p.Compound {
				nut = "hex nut "
			}
			buy.add(nut+size+coat, r.Count)
		}
		if r.Washers > 0 {
			what := "washer " + size + ", " + measure.FeetInches(goes.washer*measure.Inch, 16) + " across" + coat
			if w := p.Joint.Washer; w > 0 {
				what = "plate washer for " + size + ", " + measure.FeetInches(w, 16) + " across" + coat
			}
			buy.add(what, r.Count*r.Washers)
		}
		if gap := inches(p.Joint.Gap); gap > 0 && goes.thick > 0 {
			faces := 1
			if p.Joint.Double {
				faces = 2
			}
			buy.add("washer "+size+" as spacer"+coat, r.Count*faces*int(math.Ceil(gap/goes.thick-hair)))
		}
	}
	for i := range buy {
		buy[i].Count = spare(buy[i].Count)
	}
	return rows, buy, nil
}

// A list gathers like things in the order they first come.
type list []Item

func (l *list) add(what string, n int) {
	for i := range *l {
		if (*l)[i].What == what {
			(*l)[i].Count += n
			return
		}
	}
	*l = append(*l, Item{what, n})
}
