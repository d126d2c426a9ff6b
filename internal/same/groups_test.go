package same

import (
	"math"
	"time"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
	"example.org/floewright/float/moor"
	"example.org/floewright/frame"
	"example.org/floewright/frame/layout"
	"example.org/floewright/frame/rack"
	"example.org/floewright/ice"
	"example.org/floewright/ice/action"
	"example.org/floewright/ice/season"
	"example.org/floewright/internal/kelvin"
	"example.org/floewright/lumber"
	"example.org/floewright/lumber/fasten"
	"example.org/floewright/lumber/measure"
)

func drum(s source) float.Cylinder {
	return float.Cylinder{Diameter: s.between(0.3, 1), Length: s.between(0.5, 2)}
}

func up(s source) r3.Vec {
	return r3.Vec{X: s.between(-0.5, 0.5), Y: s.between(-0.5, 0.5), Z: s.between(0.5, 1)}
}

func putWet(t *tape, w float.Wet) {
	t.put(nil, w.Volume, w.VolumeMoment.X, w.VolumeMoment.Y, w.VolumeMoment.Z, w.Plane)
	t.put(nil, w.PlaneMoment.X, w.PlaneMoment.Y, w.PlaneMoment.Z)
	t.put(nil, w.PlaneInertia[:]...)
}

// dock floats on four drums with a person on it.
func dock(s source) *float.Platform {
	c := drum(s)
	p := &float.Platform{Density: 1000}
	for _, at := range [][2]float64{{-1.5, -0.8}, {1.5, -0.8}, {-1.5, 0.8}, {1.5, 0.8}} {
		p.Units = append(p.Units, float.Unit{Body: c, At: r3.Vec{X: at[0], Y: at[1]}, Mass: 10})
	}
	frame := s.between(0.2, 0.6) * 4000 * c.Volume()
	p.Weights = []float.Weight{
		{Mass: frame, At: r3.Vec{Z: 0.4}},
		{Mass: 84, At: r3.Vec{X: s.between(-1, 1), Y: s.between(-0.4, 0.4), Z: 1.5}},
	}
	return p
}

func shaft(s source) *moor.Line {
	l := &moor.Line{Pieces: []moor.Piece{{Length: s.between(5, 20), Weight: s.between(5, 60)}}}
	if s.IntN(2) == 0 {
		l.Pieces = append(l.Pieces, moor.Piece{Length: s.between(2, 10), Weight: s.between(0.1, 2), Stretch: s.about(2e4, 6)})
	}
	return l
}

func sheet(s source) ice.Plate {
	return ice.Plate{Thickness: s.between(0.1, 0.8), E: s.between(1e9, 9e9), Nu: s.between(0.2, 0.4)}
}

var groups = []group{
	{"float: cylinder by its draft", 500, func(s source, t *tape) {
		c := drum(s)
		v, err := c.Displaced(c.Diameter * s.Float64())
		t.put(err, v, c.Volume())
	}},
	{"float: cylinder by its volume", 500, func(s source, t *tape) {
		c := drum(s)
		d, err := c.Draft(c.Volume() * s.Float64())
		t.put(err, d)
	}},
	{"float: wet cylinder, level and tilted", 500, func(s source, t *tape) {
		c := drum(s)
		h := c.Diameter * s.between(-0.7, 0.7)
		putWet(t, c.Wet(h, r3.Vec{Z: 1}))
		putWet(t, c.Wet(h, up(s)))
	}},
	{"float: wet block", 500, func(s source, t *tape) {
		b := float.Block{Length: s.between(0.5, 3), Width: s.between(0.5, 2), Height: s.between(0.2, 1)}
		putWet(t, b.Wet(b.Height*s.between(-0.7, 0.7), up(s)))
	}},
	{"float: rest of a dock", 200, func(s source, t *tape) {
		r, err := dock(s).Settle()
		t.put(err, r.Heel, r.Trim, r.Level, r.GM[0][0], r.GM[0][1], r.GM[1][1])
	}},
	{"float: righting of a dock", 50, func(s source, t *tape) {
		c, err := dock(s).Righting(0, []float64{0, 0.05, 0.1, 0.15})
		t.put(err)
		for _, p := range c.Points {
			t.put(nil, p.Lever, p.Level)
		}
	}},
	{"float: period", 300, func(s source, t *tape) {
		p, err := float.Period(s.about(1, 20), s.about(1, 20))
		t.put(err, p)
	}},
	{"float: water and air", 300, func(s source, t *tape) {
		w, err := float.Water{Celsius: s.between(0, 40), Salinity: s.between(0, 40)}.Density()
		t.put(err, w)
		p, err := float.Seal{Celsius: s.between(-20, 40)}.Pressure(s.between(-40, 50))
		t.put(err, p)
	}},
	{"moor: a line by its pull", 300, func(s source, t *tape) {
		h, err := shaft(s).Pull(s.about(20, 9), s.between(1, 4))
		t.put(err, h.Reach, h.Down, h.Lift, h.Lying, h.Stiffness[0][0], h.Stiffness[0][1], h.Stiffness[1][1])
	}},
	{"moor: a line by its reach", 300, func(s source, t *tape) {
		l := shaft(s)
		long := 0.0
		for _, p := range l.Pieces {
			long += p.Length
		}
		h, err := l.At(float64(long*s.between(0.5, 0.97)), s.between(0.5, 2), moor.Hang{})
		t.put(err, h.Pull, h.Down)
	}},
	{"moor: wave length and push", 300, func(s source, t *tape) {
		sea := moor.Sea{Height: s.between(0.1, 1), Period: s.between(1, 6)}
		depth := s.between(0.5, 20)
		l, err := sea.Length(depth)
		t.put(err, l)
		crest, drift, err := sea.Push(depth, depth*s.Float64(), s.between(0.1, 1))
		t.put(err, crest, drift)
	}},
	{"moor: waves by the wind", 300, func(s source, t *tape) {
		all, err := moor.Fetch{Wind: s.between(5, 30), Length: s.between(200, 20000), Depth: s.between(1, 20), Duration: s.between(600, 9000)}.Spread()
		t.put(err)
		for _, w := range all {
			t.put(nil, w.Height, w.Period)
		}
	}},
	{"moor: wind", 300, func(s source, t *tape) {
		w, err := moor.Wind{Speed: s.between(5, 40)}.To(s.between(0.5, 20), s.between(1, 7200))
		t.put(err, w.Speed)
		l, err := w.Load(s.between(-4, 4), moor.Face{End: s.between(1, 5), Side: s.between(1, 9), Height: 1})
		t.put(err, l.X, l.Y)
	}},
	{"moor: ramp", 300, func(s source, t *tape) {
		r := moor.Ramp{Length: s.between(3, 9), Width: 1, Mass: s.between(50, 300), Shore: s.between(0, 2), Deck: 0.4}
		a, err := r.Angle(s.between(-0.5, 1))
		t.put(err, a)
		d, err := r.Slide(s.between(-0.5, 0), s.between(0, 1))
		t.put(err, d)
	}},
	{"lumber: stability factors", 500, func(s source, t *tape) {
		c, err := lumber.ColumnStability(s.between(1e6, 2e7), s.between(1e9, 6e9), s.between(3, 50))
		t.put(err, c.Value)
		b, err := lumber.BeamStability(s.between(1e6, 2e7), s.between(1e9, 6e9), s.between(0.5, 8), s.between(0.1, 0.3), 0.0381)
		t.put(err, b.Value)
	}},
	{"lumber: sections and moisture", 300, func(s source, t *tape) {
		c := lumber.Section{Width: s.between(0.02, 0.3), Depth: s.between(0.02, 0.3)}
		t.put(nil, c.Area(), c.Modulus(), c.Inertia())
		d, err := lumber.Density(s.between(0.3, 0.7), s.between(0.01, 0.6))
		t.put(err, d)
		g, err := lumber.Gap(s.between(0.1, 0.2), s.between(0.08, 0.19), 0.003, s.between(0.08, 0.19))
		t.put(err, g)
	}},
	{"lumber: torsion of a section", 300, func(s source, t *tape) {
		c := lumber.Section{Width: s.between(0.02, 0.3), Depth: s.between(0.02, 0.3)}
		t.put(nil, c.Torsion(), c.TorsionModulus())
	}},
	{"fasten: yield modes", 300, func(s source, t *tape) {
		wood := func(thick float64) fasten.Piece {
			return fasten.Piece{Grade: lumber.Grade{G: lumber.Value{Printed: 0.55, Unit: 1}}, Thickness: thick, Width: 0.14}
		}
		bolt := fasten.Fastener{Kind: fasten.Bolt, Diameter: 0.5 * measure.Inch, Length: 10 * measure.Inch}
		y, err := fasten.Joint{Fastener: bolt, Main: wood(s.between(0.04, 0.14)), Side: wood(s.between(0.03, 0.09)), PerRow: 1}.Yield()
		t.put(err, y.Z)
		for _, m := range y.Modes {
			t.put(nil, m.Z)
		}
	}},
	{"fasten: group action", 300, func(s source, t *tape) {
		f, err := fasten.GroupAction(2+s.IntN(10), 0.5*measure.Inch, s.between(0.05, 0.2), s.about(1e6, 8), s.about(1e6, 8), false)
		t.put(err, f.Value)
	}},
	{"frame: beam", 200, func(s source, t *tape) {
		b := frame.Beam{
			Length: 6, EI: s.about(1e4, 6), GA: s.about(1e5, 6),
			Rests: []frame.Rest{{}, {At: s.between(2, 4), Support: frame.Spring(s.about(1e5, 5))}, {At: 6}},
			Loads: []frame.Load{frame.Uniform(0, 6, s.between(100, 900)), frame.Point(s.between(0, 6), s.between(100, 900))},
		}
		l, err := b.Solve()
		t.put(err)
		if err == nil {
			e := l.Extremes()
			t.put(nil, l.Push...)
			t.put(nil, e.Down.Deflection, e.Down.X, e.Shear.Shear)
		}
	}},
	{"frame: grillage", 100, func(s source, t *tape) {
		g := &frame.Grillage{Nodes: [][2]float64{{0, 0}, {2.4, 0}, {0, 2.4}, {2.4, 2.4}}}
		for _, ends := range [][2]int{{0, 1}, {2, 3}, {0, 2}, {1, 3}} {
			g.Members = append(g.Members, frame.Member{I: ends[0], J: ends[1], EI: s.about(5e4, 4), GJ: 2e3, GA: 1e7, Loads: []frame.Load{frame.Uniform(0, 2.4, s.between(50, 500))}})
		}
		for n := range g.Nodes {
			g.Seats = append(g.Seats, frame.Seat{Nodes: []int{n}, Support: frame.OneWay(s.between(3000, 6000))})
		}
		r, err := g.Solve()
		t.put(err)
		if err == nil {
			t.put(nil, r.Push...)
			t.put(nil, r.Torque...)
		}
	}},
	{"frame: torsion", 300, func(s source, t *tape) {
		j, err := frame.Torsion(s.between(0.02, 0.3), s.between(0.02, 0.3))
		t.put(err, j)
	}},
	{"rack: frame", 100, func(s source, t *tape) {
		f := &rack.Frame{Nodes: [][2]float64{{0, 0}, {3, 0}, {3, 2}, {0, 2}}}
		for _, n := range [][]int{{0, 1}, {1, 2}, {2, 3}, {3, 0}} {
			f.Members = append(f.Members, rack.Member{Nodes: n, EA: 2e7, EI: s.about(5e3, 4), GA: 1e6, Ends: [2]rack.End{rack.Rigid(), rack.Rigid()}, Loads: []rack.Load{rack.Uniform(0, 1, 10, s.between(10, 50))}})
		}
		f.Holds = []rack.Hold{{Node: 0, Along: 1e5, Across: 1e5, Turn: 1e4}, {Node: 1, Across: math.Inf(1)}}
		f.Forces = []rack.Force{{Node: 2, X: s.between(-900, 900), Y: s.between(-90, 90)}}
		r, err := f.Solve()
		t.put(err)
		if err == nil {
			for _, m := range r.Move {
				t.put(nil, m[:]...)
			}
			t.put(nil, r.Lines[2].At(1).Moment)
		}
	}},
	{"layout: diagonals", 300, func(s source, t *tape) {
		d, err := layout.Diagonal(s.between(1, 9), s.between(1, 9))
		t.put(err, d)
	}},
	{"layout: wedges", 300, func(s source, t *tape) {
		rise, press, spread, err := layout.Wedge(0.58, s.between(0, 0.57))
		t.put(err, rise, press, spread)
	}},
	{"layout: corners", 300, func(s source, t *tape) {
		a, b := s.between(3, 5), s.between(3, 5)
		c, err := layout.Corner(a, b, s.between(3, 5))
		t.put(err, c)
		offset, angle, err := layout.Racked(a, b, s.between(5, 7), s.between(5, 7))
		t.put(err, offset, angle)
	}},
	{"ice: plate under circles", 300, func(s source, t *tape) {
		w, err := sheet(s).At([]ice.Patch{{A: s.between(0.1, 2), Force: 900}}, s.between(0, 6), s.between(0, 6))
		t.put(err, w.Deflection, w.Mx, w.My, w.Mxy)
	}},
	{"ice: plate's stiffness", 300, func(s source, t *tape) {
		p := sheet(s)
		d, err := p.Rigidity()
		t.put(err, d)
		l, err := p.CharacteristicLength()
		t.put(err, l)
	}},
	{"ice: creep and waves", 300, func(s source, t *tape) {
		e, _, err := ice.Creep{Temperature: s.between(-30, -1), Grain: s.between(0.001, 0.05)}.Strain(s.between(1e4, 1e6), s.about(1, 20))
		t.put(err, e)
		c, err := ice.Wave{Plate: sheet(s), Depth: s.between(1, 30)}.Speed(s.between(2, 200))
		t.put(err, c)
	}},
	{"kelvin", 500, func(s source, t *tape) {
		x := s.between(0, 20)
		a, b, c, d := kelvin.K(x)
		t.put(nil, a, b, c, d)
		a, b, c, d = kelvin.B(x)
		t.put(nil, a, b, c, d)
	}},
	{"action: lifting ice", 200, func(s source, t *tape) {
		l, err := action.Cover{Thickness: s.between(0.1, 0.8)}.Uplift(action.Body{Length: s.between(0.3, 2)}, s.between(0.01, 0.5))
		t.put(err, l.Elastic.Low, l.Elastic.High, l.Force.Low, l.Force.High, l.Crack.Low)
	}},
	{"action: drifting ice", 200, func(s source, t *tape) {
		d := action.Drift{Wind: s.between(2, 25), Reach: s.between(100, 3000), Face: action.Face{Width: s.between(1, 9)}, Cover: action.Cover{Thickness: s.between(0.1, 0.8)}}
		p, err := d.Push()
		t.put(err, p.Drive.Low, p.Drive.High, p.Force.Low, p.Force.High)
	}},
	{"season: growth and slush", 300, func(s source, t *tape) {
		h, err := season.Ashton().Thickness(s.between(0, 0.5), s.between(0, 900))
		t.put(err, h)
		z, err := ice.Cover{Ice: s.between(0.1, 0.6), Snow: s.between(0, 0.6), SnowDensity: s.between(100, 400)}.Slush(s.between(850, 950))
		t.put(err, z)
	}},
	{"season: sun", 300, func(s source, t *tape) {
		p, err := season.Sun(s.between(-90, 90), 1+s.IntN(366))
		t.put(err, p)
	}},
	{"season: a winter day by day", 5, func(s source, t *tape) {
		var days []season.Day
		for i := range 240 {
			mean := 12 - 0.25*float64(i)
			if i > 120 {
				mean = -18 + 0.25*float64(i-120)
			}
			days = append(days, season.Day{
				Date: time.Date(2001, time.October, 1+i, 0, 0, 0, 0, time.UTC), Mean: mean + s.between(-6, 6),
				Snowfall: max(0, s.between(-6, 3)), Has: season.HasSnowfall,
			})
		}
		all, err := season.Run(season.Lake{Latitude: 45, MeanDepth: 4}, season.Default(), days)
		t.put(err)
		for _, d := range all {
			t.put(nil, d.Clear, d.White, d.Snow, d.Effective)
		}
	}},
}
