package dock

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

// deckTop is the height of the deck's surface above the joists' underside.
func (d *Dock) deckTop() float64 { return d.joist.section.Depth + d.board.section.Width }

// platform builds the dock without people, and what that rests on.
func (d *Dock) platform() (*float.Platform, rests, error) {
	f := &d.plan.Frame
	rs := rests{on(f.Length), on(f.Width)}
	top := d.deckTop()
	out := &float.Platform{}
	var wrong error
	for _, pc := range d.pieces() {
		rs = append(rs, pc.rests...)
		if wrong == nil {
			wrong = pc.err
		}
		at := d.on(d.run()/2+pc.s, d.reach()/2+pc.t)
		out.Weights = append(out.Weights, float.Weight{Mass: pc.count * pc.each, At: r3.Vec{X: at[0], Y: at[1], Z: pc.z}})
	}
	for i := range d.plan.Weights {
		w := &d.plan.Weights[i]
		rs = append(rs, on(w.Mass), on(w.Along), on(w.Across), on(w.Above))
		out.Weights = append(out.Weights, float.Weight{
			Mass: w.Mass.Value,
			At:   r3.Vec{X: w.Along.Value - d.length/2, Y: w.Across.Value - d.width/2, Z: top + w.Above.Value},
		})
	}
	for i := range d.plan.Floats {
		rs = append(rs, floatRests(&d.plan.Floats[i])...)
	}
	if len(d.floats) == 0 {
		rs = append(rs, rest{path: "floats", missing: true})
	}
	water, density, err := d.water()
	rs = dedupe(append(rs, water...))
	if wrong != nil {
		err = wrong
	}
	if missing := rs.err(); missing != nil {
		err = missing
	}
	if err != nil {
		return nil, rs, err
	}
	for _, m := range d.floats {
		out.Units = append(out.Units, m.unit(d.floatSize(m.set)))
	}
	x, y := d.length/2, d.width/2
	out.Corners = []r3.Vec{{X: -x, Y: -y, Z: top}, {X: x, Y: -y, Z: top}, {X: x, Y: y, Z: top}, {X: -x, Y: y, Z: top}}
	out.Density = density
	return out, rs, nil
}

// floatRests returns what the size and places of a kind of float rest on.
func floatRests(s *plan.Floats) rests {
	rs := rests{on(s.Shape), on(s.Length), on(s.Mass), on(s.Lies), on(s.Bears)}
	if s.Shape.Value == "block" {
		rs = append(rs, on(s.Width), on(s.Height))
	} else {
		rs = append(rs, on(s.Girth), on(s.Volume).standsIn(standIn(s)))
		if !plan.Has(s.Volume) {
			rs = append(rs, on(s.Of))
		}
	}
	for _, b := range s.Bays {
		rs = append(rs, on(b))
	}
	for _, m := range s.Marks {
		rs = append(rs, on(m))
	}
	for _, at := range s.Places {
		rs = append(rs, on(at.Along), on(at.Across))
	}
	if len(s.Bays) == 0 && len(s.Marks) == 0 && len(s.Places) == 0 && s.Name.Path != "" {
		rs = append(rs, rest{path: part(s, "places"), missing: true})
	}
	return rs
}

// unit returns a float as package float knows it, tied to the frame.
func (m mount) unit(size box) float.Unit {
	u := float.Unit{At: r3.Vec{X: m.x, Y: m.y, Z: m.z}, Mass: m.set.Mass.Value}
	if m.set.Lies.Value == "across" {
		u.Heading = math.Pi / 2
	}
	u.Body = float.Body(float.Cylinder{Diameter: size.height, Length: size.pushes})
	if !size.drum {
		u.Body = float.Block{Length: size.long, Width: size.breadth, Height: size.height}
	}
	return u
}

// water returns the density of the water. Salt water carries more than fresh, so
// that fresh stands in for any.
func (d *Dock) water() (rests, float64, error) {
	s := &d.plan.Site
	rs := rests{on(s.Temperature), on(s.Water).standsIn("fresh water, which carries less than salt")}
	rho, err := float.Water{Celsius: s.Temperature.Value}.Density()
	return rs, rho, err
}

// dedupe keeps the first of each path.
func dedupe(rs rests) rests {
	seen := make(map[string]bool, len(rs))
	out := make(rests, 0, len(rs))
	for _, r := range rs {
		if !seen[r.path] {
			seen[r.path] = true
			out = append(out, r)
		}
	}
	return out
}

// A loading is one case the dock is to float in.
type loading struct {
	name    string
	weights []float.Weight
	rests   rests
	notes   []string
}

// uniform is the load laid evenly over the deck.
func (d *Dock) uniform() loading {
	l := &d.plan.Loads
	return loading{
		name:    "under " + measure.Pressure.Format(l.Flotation.Value, d.system()),
		rests:   rests{on(l.Flotation), on(l.Centre)},
		notes:   []string{"uniform load: " + limit("", evenLoad).Rule.String(), "its centre " + d.standing() + " above the deck"},
		weights: []float.Weight{{Mass: l.Flotation.Value * d.length * d.width / measure.Gravity, At: r3.Vec{Z: d.deckTop() + l.Centre.Value}}},
	}
}

func (d *Dock) standing() string { return measure.Length.Format(d.plan.Loads.Centre.Value, d.system()) }

// crowd is everyone at each of the four edges in turn.
func (d *Dock) crowd() []loading {
	l := &d.plan.Loads
	rs := rests{on(l.FromEdge), on(l.Centre)}
	mass := 0.0
	for i := range d.plan.People {
		p := &d.plan.People[i]
		rs = append(rs, on(p.Count), on(p.Mass))
		mass += float64(p.Count.Value) * p.Mass.Value
	}
	if len(d.plan.People) == 0 {
		rs = append(rs, rest{path: "people", missing: true})
	}
	x, y := d.length/2-l.FromEdge.Value, d.width/2-l.FromEdge.Value
	var out []loading
	for _, at := range []struct {
		edge string
		x, y float64
	}{{"near side", 0, -y}, {"far side", 0, y}, {"near end", -x, 0}, {"far end", x, 0}} {
		out = append(out, loading{
			name: "with everyone at one edge", rests: rs,
			notes: []string{
				"the " + at.edge + " is the worst of the four edges",
				measure.Mass.Format(mass, d.system()) + " of people, their centres " + d.standing() + " above the deck (" + srcPerson.String() + ")",
			},
			weights: []float.Weight{{Mass: mass, At: r3.Vec{X: at.x, Y: at.y, Z: d.deckTop() + l.Centre.Value}}},
		})
	}
	return out
}
