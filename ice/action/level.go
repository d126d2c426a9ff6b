package action

import (
	"math"

	"example.org/floewright/internal/kelvin"
	"example.org/floewright/lumber/measure"
)

// A Lift is what a change of the lake's level does to something held in the
// ice: lifting where the lake rises, pressing down where it falls. Sizes are
// without sign, in N, or in N/m along a wall.
type Lift struct {
	Level   float64 // m, the change; negative where the lake falls
	Elastic Span    // force of the unbroken sheet: edge free to turn, edge held
	Caps    []Span  // what may end it: bending of the ice, bond
	Force   Span    // the lesser of all, named after what governs its high end
	Moment  Span    // at the edge, per metre of it, N, no more than cracks the ice
	Crack   Span    // m of level change at the first crack; no cap, since the cracked sheet still holds
	Rests   []measure.Assumption
	Notes   []string

	perMetre bool
	err      error
}

// A Body is something frozen in, by its outline at the waterline: a pile, a
// drum, or a whole dock that the ice holds as one.
type Body struct {
	Length  float64 // m
	Breadth float64 // m; 0 is a round body of diameter Length

	// Smooth says that the sides are straight and smooth, so that the ice can
	// slip along them. Ribs, a bulge, or a drum on its side lock it instead,
	// and bond is no cap.
	Smooth bool
	Bond   Span // strength of the bond to smooth sides, Pa; zero is not known and caps nothing: see Adhesion
}

var (
	plateSource = &measure.Source{
		Title:   "thin plate on water raised against a fixed edge, closed form",
		Locator: "derived; agrees with independent computation", Status: measure.Independent,
	}
	wedges = &measure.Source{
		Title:   "D. E. Nevel, wedges on an elastic foundation, 8 wedges",
		Locator: "a/l to 1, where the wedge equation was solved independently to 4 %", Status: measure.Memory,
	}
	levelRange = measure.Range{Kind: measure.Length, Lo: -10, Hi: 10, Source: slip}
	sideRange  = measure.Range{Kind: measure.Length, Lo: 1e-9, Hi: 200, Source: slip}
	bondRange  = measure.Range{Kind: measure.Stress, Lo: 1, Hi: 1e8, Source: slip}
	wedgeRange = measure.Range{Lo: 0, OpenLo: true, Hi: 1, Source: wedges}
)

// hinge is the greatest moment of a sheet hinged at a wall over k l² δ,
// exp(-π/4) sin(π/4), at π l/(2√2) from it.
var hinge = math.Exp(-math.Pi/4) / math.Sqrt2

const bendName, bondName = "bending of the ice", "bond of the ice"

// Wall returns the force per metre of a long straight side, longer than a few
// characteristic lengths, under a level change in m:
//
//	held edge   V = √2 k l δ,   M = k l² δ
//	hinged      V = k l δ/√2,   M = 0.322 k l² δ, 1.11 l from the wall
//	cap         the hinged sheet cracks at M = σ h²/6: V = 0.366 σ h²/l
//
// bond is the strength of its bond in Pa, τ h per metre; the zero Span is a wall that
// locks the ice. It is plate theory, in closed form. Crack runs from the held edge to
// the hinged sheet.
func (c Cover) Wall(level float64, bond Span) (Lift, error) {
	f, err := c.fill()
	if err == nil {
		err = check("change of the level", level, levelRange)
	}
	var τ Span
	var known measure.Knowledge
	if err == nil {
		τ, known, err = bond.or(Span{Name: bondName}, bondRange)
	}
	if err != nil {
		return Lift{err: err}, err
	}
	δ := math.Abs(level)
	out := Lift{
		Level: level, perMetre: true, Rests: f.bends(), Notes: levelNotes(level),
		Elastic: Span{"unbroken sheet", f.k * f.short * δ / math.Sqrt2, math.Sqrt2 * f.k * f.long * δ, plateSource},
		Caps: []Span{{
			bendName, f.section(f.σ.Low) / (math.Sqrt2 * hinge * f.long), f.section(f.σ.High) / (math.Sqrt2 * hinge * f.short), f.σ.Source,
		}},
		Moment: Span{
			"moment at the wall, held, or in the hinged sheet",
			math.Min(hinge*f.k*f.short*f.short*δ, f.section(f.σ.Low)),
			math.Min(f.k*f.long*f.long*δ, f.section(f.σ.High)), plateSource,
		},
		Crack: Span{
			"level change at the first crack", f.section(f.σ.Low) / (f.k * f.long * f.long),
			f.section(f.σ.High) / (hinge * f.k * f.short * f.short), f.σ.Source,
		},
	}
	if known == measure.Measured {
		out.bonded(τ, f.h)
	}
	out.Force = lesser(out.Elastic, out.Caps)
	return out, nil
}

// Uplift returns the force on a body held in a sheet of wide extent under a
// level change in m:
//
//	unbroken   F = c k l² δ, c → 8 as a/l → 0; edge free to turn, edge held
//	bending    F = 16 tan(π/8) (1.05 + 2 a/l + 0.5 (a/l)³) σ h²/6, the wedges around it fail
//	bond       F = τ h × outline
//
// with a the radius of the round body of the same outline: plate theory, and Nevel's
// wedges from memory. The wedge formula covers a/l to 1: a longer dock is a
// [Cover.Wall]. Drums within 4 l of each other share: all of them feel no more than the
// dock's outline as one Body. The plate around the body is within 4.1 units in the last
// place, its moments within 6.1.
// Worst at (18.89, 0.4491), ordered as in testdata/accuracy.csv.
func (c Cover) Uplift(b Body, level float64) (Lift, error) {
	f, err := c.fill()
	if err == nil {
		err = check("change of the level", level, levelRange)
	}
	var τ Span
	var known measure.Knowledge
	if err == nil {
		τ, known, err = b.check()
	}
	if err == nil {
		err = wedgeRange.Check("radius of the body over the characteristic length", b.radius()/f.short)
	}
	if err != nil {
		return Lift{err: err}, err
	}
	δ, a := math.Abs(level), b.radius()
	thin, stiff := ring(a/f.short, f.nu), ring(a/f.long, f.nu)
	kThin, kStiff := f.k*f.short*f.short, f.k*f.long*f.long
	out := Lift{
		Level: level, Rests: f.bends(), Notes: levelNotes(level),
		Elastic: Span{"unbroken sheet", math.Min(thin.held, thin.free) * kThin * δ, math.Max(stiff.held, stiff.free) * kStiff * δ, plateSource},
		Caps:    []Span{{bendName, wedge(a/f.long) * f.section(f.σ.Low), wedge(a/f.short) * f.section(f.σ.High), wedges}},
		Moment: Span{
			"moment at the edge, held, or free to turn",
			math.Min(math.Min(thin.heldMoment, thin.freeMoment)*kThin*δ, f.section(f.σ.Low)),
			math.Min(math.Max(stiff.heldMoment, stiff.freeMoment)*kStiff*δ, f.section(f.σ.High)), plateSource,
		},
		Crack: Span{
			"level change at the first crack",
			f.section(f.σ.Low) / (math.Max(stiff.heldMoment, stiff.freeMoment) * kStiff),
			f.section(f.σ.High) / (math.Min(thin.heldMoment, thin.freeMoment) * kThin), f.σ.Source,
		},
	}
	switch {
	case !b.Smooth:
		out.Notes = append(out.Notes, "the ice locks to the body: bond caps nothing")
	case known != measure.Measured:
		out.Notes = append(out.Notes, "adhesion to these sides is not known: it caps nothing, and the low end is 0")
	default:
		out.bonded(τ, f.h*b.outline())
	}
	out.Force = lesser(out.Elastic, out.Caps)
	if b.Smooth && known != measure.Measured {
		out.Force.Low = 0
	}
	return out, nil
}

// bonded adds the cap by bond over an area in m², or per metre in m.
func (l *Lift) bonded(τ Span, area float64) {
	l.Caps = append(l.Caps, Span{bondName, τ.Low * area, τ.High * area, τ.Source})
	l.Rests = append(l.Rests, τ.rest(measure.Measured, measure.Stress))
}

func (b Body) check() (Span, measure.Knowledge, error) {
	if err := check("length of the body", b.Length, sideRange); err != nil {
		return Span{}, measure.Unknown, err
	}
	if b.Breadth != 0 {
		if err := check("breadth of the body", b.Breadth, sideRange); err != nil {
			return Span{}, measure.Unknown, err
		}
	}
	return b.Bond.or(Span{Name: bondName}, bondRange)
}

// outline is the length of the waterline in m.
func (b Body) outline() float64 {
	if b.Breadth == 0 {
		return math.Pi * b.Length
	}
	return 2 * (b.Length + b.Breadth)
}

func (b Body) radius() float64 { return b.outline() / (2 * math.Pi) }

func levelNotes(level float64) []string {
	notes := []string{"creep of the ice under a slow change is not counted: no figure for its relief was read"}
	if level < 0 {
		return append(notes, "the lake falls: the sheet hangs on what is held and presses it down; pieces that break off and stay on it weigh on it and are not counted")
	}
	return append(notes, "repeated rises lift piles step by step (L. J. Zabilansky 1998); that is not computed")
}

// wedge is the failure load of the wedges around a load, over σ h²/6.
func wedge(α float64) float64 {
	return 16 * math.Tan(math.Pi/8) * (1.05 + 2*α + 0.5*α*α*α)
}

// edges are the forces on a round body over k l² δ and the greatest moments at
// its edge over the same, edge held or free to turn.
type edges struct{ held, free, heldMoment, freeMoment float64 }

// ring solves the plate outside a circle α characteristic lengths in radius
// whose edge is held a unit above the rest: w = A ker ρ + B kei ρ.
func ring(α, nu float64) edges {
	ker, kei, dker, dkei := kelvin.K(α)
	n := 1 - nu
	force := func(a, b float64) float64 { return 2 * math.Pi * α * (b*dker - a*dkei) }

	slope := ker*dkei - kei*dker // held: w = 1, w' = 0
	a, b := dkei/slope, -dker/slope
	held := edges{held: force(a, b), heldMoment: math.Abs(a*kei - b*ker)}

	// Free: w = 1, radial moment 0, tangential moment left.
	u, v := -kei-n*dker/α, ker-n*dkei/α
	free := v*ker - u*kei
	a, b = v/free, -u/free
	held.free = force(a, b)
	held.freeMoment = math.Abs(a*(-nu*kei+n*dker/α) + b*(nu*ker+n*dkei/α))
	return held
}
