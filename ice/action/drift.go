package action

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// A Face is the side of the dock that a sheet comes to bear on.
type Face struct {
	Width  float64 // m across the push
	Height float64 // m above the water, over which ice rides up a slope
	Slope  float64 // rad from level, 0.001 to π/2; 0 and π/2 are vertical, where the ice does not bend
	// Friction of ice on a sloping face; zero is 0.1 to 0.5.
	Friction Span
}

func (f Face) slope() float64 {
	if f.Slope == 0 {
		return math.Pi / 2
	}
	return f.Slope
}

// A Drift is a sheet that wind and current push at the dock at break-up.
type Drift struct {
	Wind    float64 // m/s at 10 m, a mean over the minutes a floe answers to
	Current float64 // m/s under the ice, the same way
	Reach   float64 // m of ice upwind, to the next shore or open water
	Width   float64 // m of it across the wind; 0 is as wide as it is long

	// Touching says that the sheet lies against the dock and cannot gather way.
	// Otherwise it brings its momentum, and the force is that of the caps.
	Touching bool

	Air, Water Span // drag coefficients by τ = ρ C U²; zero is published, of sea ice: see Drags
	Face       Face
	Cover      Cover
}

// A Push is what a drifting sheet does to a face, in N.
type Push struct {
	Wind, Current Span   // drag on the floe's top and bottom
	Drive         Span   // both
	Caps          []Span // what the ice on the face bears: crushing, buckling, bending where the face slopes
	Limit         Span   // the lesser of the caps: no wind pushes harder, and a floe under way reaches it
	Force         Span   // the lesser of drive and limit, named after what governs its high end
	Rests         []measure.Assumption
	Notes         []string

	err error
}

var (
	seaAir = []Span{
		{"very smooth ice without ridges", 1.5e-3, 1.5e-3, guest},
		{"young ice", 2.3e-3, 3.1e-3, guest},
		{"ice at the edge of open water", 3.1e-3, 3.4e-3, guest},
		{"ice broken by waves", 4.2e-3, 4.6e-3, guest},
		{"sea ice of the Weddell Sea", 1.2e-3, 2.2e-3, fisher},
		{"all reported, air", 1e-3, 9e-3, steiner},
	}
	seaWater = []Span{{"all reported, water", 1e-3, 35e-3, steiner}}

	guest = &measure.Source{
		Title:   "P. S. Guest and K. L. Davidson, The aerodynamic roughness of different types of sea ice, Journal of Geophysical Research",
		Edition: "1991", Locator: "abstract; good to 20 % or better", Status: measure.Read,
	}
	fisher = &measure.Source{
		Title:   "R. Fisher and V. I. Lytle, Atmospheric drag coefficients of Weddell Sea ice computed from roughness profiles, Annals of Glaciology",
		Locator: "abstract", Status: measure.Read,
	}
	steiner = &measure.Source{
		Title:   "N. Steiner, Introduction of variable drag coefficients into sea-ice models, Annals of Glaciology",
		Edition: "2001", Locator: "introduction, values reported by others", Status: measure.Quoted,
	}

	// The smoothest to the roughest broken ice; the extremes of shear zones and
	// of all reports aside.
	airDrag = Span{"drag coefficient of wind on the ice", 1.2e-3, 4.6e-3, &measure.Source{
		Title:   "R. Fisher and V. I. Lytle, Annals of Glaciology (low end); P. S. Guest and K. L. Davidson, Journal of Geophysical Research, 1991 (high end): sea ice",
		Locator: "abstracts", Status: measure.Read,
	}}
	waterDrag = Span{"drag coefficient of current under the ice", 1e-3, 35e-3, steiner}
	friction  = Span{"friction of ice on the face", 0.1, 0.5, &measure.Source{
		Title:  "M. F. Ashby and D. R. H. Jones 1980, steel on ceramics and ice, in an encyclopedia of physics",
		Status: measure.Quoted,
	}}

	buckleSource = &measure.Source{
		Title:   "floating beam, free end, k l² per metre (M. Hetényi 1946); D. S. Sodhi and D. E. Nevel on narrow faces, 1 + 3.32/(1 + b/4l)",
		Locator: "as in EM 1110-2-1612", Status: measure.Memory,
	}
	slopeSource = &measure.Source{
		Title:  "K. R. Croasdale, bending and riding up on a sloping face, with the ends of a narrow one, 1 + π² l/(4 b)",
		Status: measure.Memory,
	}

	windRange    = measure.Range{Kind: measure.Speed, Lo: 0, Hi: 60, Source: slip}
	currentRange = measure.Range{Kind: measure.Speed, Lo: 0, Hi: 3, Source: slip}
	reachRange   = measure.Range{Kind: measure.Length, Lo: 0, OpenLo: true, Hi: 2e5, Source: slip}
	heightRange  = measure.Range{Kind: measure.Length, Lo: 0, Hi: 10, Source: slip}
	slopeRange   = measure.Range{Kind: measure.Angle, Lo: 1e-3, Hi: math.Pi / 2, Source: &measure.Source{Title: "faces that lean away from the ice", Status: measure.OwnChoice}}
	dragRange    = measure.Range{Lo: 1e-4, Hi: 0.1, Source: slip}
	rubRange     = measure.Range{Lo: 0, Hi: 2, Source: slip}
)

const (
	// coldAir is the density of dry air at 0 °C and 101 325 Pa, kg/m³, from the
	// gas law with R = 287.05 J/(kg K).
	coldAir = 1.292
	water   = 1000
	// lakeIce is the density of black ice, kg/m³, as lake-ice models use it.
	lakeIce = 917
)

// Drags returns published drag coefficients of wind on ice and of water under it, by
// τ = ρ C U² with the wind at 10 m, each with its source. All are of sea ice: none of
// lake ice was read.
func Drags() (air, water []Span) {
	return append([]Span(nil), seaAir...), append([]Span(nil), seaWater...)
}

// Push returns the push on the face:
//
//	drive      (1.292 Ca U² + 1000 Cw V²) × reach × width, wind and current the same way
//	crushing   p h b
//	buckling   k l² b, free edge and wide face, to 1 + 3.32/(1 + b/4l) times that, or twice
//	bending    on a slope α with friction μ, rise z: (0.366 σ h²/l C₁ + z h ρ g C₂) b,
//	           C₁ = (sin α + μ cos α)/(cos α - μ sin α), C₂ = (sin α + μ cos α)(C₁ + cot α)
//
// with b the width of the contact, after the sources that each part carries. Ice
// piled up before the face adds to bending and is not counted.
// On a slope within 2.5 units in the last place, counting how it moves with the slope.
// Worst at (0.02424, 0.3375), ordered as in testdata/accuracy.csv.
func (d Drift) Push() (Push, error) {
	f, err := d.Cover.fill()
	for _, c := range []struct {
		field string
		x     float64
		r     measure.Range
	}{
		{"wind", d.Wind, windRange},
		{"current", d.Current, currentRange},
		{"reach of the ice", d.Reach, reachRange},
		{"width of the floe", d.width(), reachRange},
		{"width of the face", d.Face.Width, sideRange},
		{"height of the face", d.Face.Height, heightRange},
		{"slope of the face", d.Face.slope(), slopeRange},
	} {
		if err == nil {
			err = check(c.field, c.x, c.r)
		}
	}
	var air, under Span
	var kAir, kUnder measure.Knowledge
	if err == nil {
		air, kAir, err = d.Air.or(airDrag, dragRange)
	}
	if err == nil {
		under, kUnder, err = d.Water.or(waterDrag, dragRange)
	}
	var out Push
	if err == nil {
		out.Caps, out.Notes, err = d.caps(f)
	}
	if err != nil {
		return Push{err: err}, err
	}
	area := d.Reach * d.width()
	wind, flow := coldAir*d.Wind*d.Wind*area, water*d.Current*d.Current*area
	out.Wind = Span{"wind on the ice", air.Low * wind, air.High * wind, air.Source}
	out.Current = Span{"current under the ice", under.Low * flow, under.High * flow, under.Source}
	out.Drive = Span{"wind and current", out.Wind.Low + out.Current.Low, out.Wind.High + out.Current.High, air.Source}
	out.Limit = lesser(out.Caps[0], out.Caps[1:])
	out.Force = lesser(out.Drive, []Span{out.Limit})
	if d.Width != 0 {
		out.Notes = append(out.Notes, "only the width given was counted: all the ice that leans on the dock pushes it")
	}
	if !d.Touching {
		out.Force.High, out.Force.Name, out.Force.Source = out.Limit.High, out.Limit.Name, out.Limit.Source
		out.Notes = append(out.Notes, "the sheet may gather way: its momentum, not the wind, brings it to the cap")
	}
	out.Rests = append([]measure.Assumption{air.rest(kAir, measure.Ratio)}, f.pushes()...)
	if d.Current > 0 {
		out.Rests = append(out.Rests, under.rest(kUnder, measure.Ratio))
	}
	return out, nil
}

func (d Drift) width() float64 {
	if d.Width == 0 {
		return d.Reach
	}
	return d.Width
}

// caps returns what the ice bears on the face, crushing first.
func (d Drift) caps(f cover) ([]Span, []string, error) {
	μ, _, err := d.Face.Friction.or(friction, rubRange)
	if err != nil {
		return nil, nil, err
	}
	b := math.Min(d.Face.Width, d.width())
	narrow := math.Max(2, 1+3.32/(1+b/(4*f.long)))
	out := []Span{
		{"crushing of the ice", f.p.Low * f.h * b, f.p.High * f.h * b, f.p.Source},
		{"buckling of the ice", f.k * f.short * f.short * b, narrow * f.k * f.long * f.long * b, buckleSource},
	}
	α := d.Face.slope()
	if α == math.Pi/2 {
		return out, []string{"a vertical face does not bend the ice: crushing and buckling cap the push"}, nil
	}
	if μ.High*math.Tan(α) >= 1-1e-12 { // the last bit of a tangent is each machine's own
		return out, []string{"so steep and rough a face does not bend the ice: crushing and buckling cap the push"}, nil
	}
	ends := 1 + math.Pi*math.Pi*f.short/(4*b)
	lift := func(σ, l float64) float64 { return f.section(σ) / (math.Sqrt2 * hinge * l) }
	ride := d.Face.Height * f.h * lakeIce * measure.Gravity
	c1, c2 := climb(α, μ.Low)
	low := lift(f.σ.Low, f.long) * c1 * b
	high1, high2 := climb(α, μ.High)
	high := (lift(f.σ.High, f.short)*ends*high1 + ride*high2) * b
	out = append(out, Span{bendName, low + ride*c2*b, high, slopeSource})
	return out, []string{"ice piled up before the face adds to the force that bends it and is not counted"}, nil
}

// climb returns the level force over the vertical one on a slope, and over the
// weight per height of what rides up.
func climb(α, μ float64) (c1, c2 float64) {
	sin, cos := math.Sincos(α)
	along := sin + μ*cos
	c1 = along / (cos - μ*sin)
	return c1, along * (c1 + cos/sin)
}
