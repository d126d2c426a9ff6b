package float_test

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
	"example.org/floewright/lumber/measure"
)

// catamaran returns a dock of two half-immersed tubes of radius r (m) and length
// l, their axes along x and 2 b apart, its mass at the height z above the axes,
// spread as a plate of the given size: every number of its motion has a closed
// form.
func catamaran(r, l, b, z, length, width float64) *float.Platform {
	const rho = 1000
	mass := rho * math.Pi * r * r * l // both tubes half under
	plate, err := float.Weight{Mass: mass, At: r3.Vec{Z: z}}.Spread(length, width)
	if err != nil {
		panic(err)
	}
	tube := float.Cylinder{Diameter: 2 * r, Length: l}
	return &float.Platform{
		Units:   []float.Unit{{Body: tube, At: r3.Vec{Y: b}}, {Body: tube, At: r3.Vec{Y: -b}}},
		Weights: plate, Density: rho,
	}
}

// TestMotionClosedForm works a two-tube dock by hand. Half immersed, a tube has
// the waterplane 2 r l and displaces ρπr²l/2; its added mass is C times that.
//
//	heave: T = 2π √(πr(1+C)/(4g))
//	roll:  inertia M (W²/12 + z²) + C M b², stiffness M g (2 l (b² + r²/3) 2r/(πr²l) - M g (z + 4r/(3π))
//
// written out below term by term.
func TestMotionClosedForm(t *testing.T) {
	const r, l, b, z, length, width = 0.28575, 4.0, 1.2, 0.5, 4.5, 3.0
	const g, rho = 9.80665, 1000.0
	m, err := catamaran(r, l, b, z, length, width).Motion()
	if err != nil {
		t.Fatal(err)
	}
	mass := rho * math.Pi * r * r * l
	// Centre of buoyancy of a half disc: 4r/(3π) under the axis; the weight z over it.
	down := z + 4*r/(3*math.Pi)
	area := 2 * 2 * r * l
	rollStiff := rho*g*(area*b*b+2*l*math.Pow(2*r, 3)/12) - mass*g*down
	pitchStiff := rho*g*(2*2*r*l*l*l/12) - mass*g*down
	for i, c := range []float64{0.5, 1} {
		heave := 2 * math.Pi * math.Sqrt(math.Pi*r*(1+c)/(4*g))
		roll := 2 * math.Pi * math.Sqrt((mass*width*width/12+c*mass*b*b)/rollStiff)
		pitch := 2 * math.Pi * math.Sqrt((mass*length*length/12+c*mass*l*l/12)/pitchStiff)
		for _, v := range []struct {
			name      string
			band      float.Band
			want, tol float64
		}{{"heave", m.Heave, heave, 1e-9}, {"roll", m.Roll, roll, 1e-9}, {"pitch", m.Pitch, pitch, 1e-9}} {
			got := v.band.Shortest
			if i == 1 {
				got = v.band.Longest
			}
			if math.Abs(got/v.want-1) > v.tol {
				t.Errorf("%s with %g of the displaced mass: %.9g s, by hand %.9g s", v.name, c, got, v.want)
			}
			if math.Abs(v.band.Pure-1) > 1e-6 {
				t.Errorf("%s of an even dock is only %g pure", v.name, v.band.Pure)
			}
		}
	}
}

// TestMotionAcross turns the same dock: tubes across change roll for pitch.
func TestMotionAcross(t *testing.T) {
	p := catamaran(0.3, 4, 1.2, 0.4, 4.5, 3)
	q := *p
	q.Units = append([]float.Unit(nil), p.Units...)
	for i := range q.Units {
		q.Units[i].Heading = math.Pi / 2
		q.Units[i].At.X, q.Units[i].At.Y = -p.Units[i].At.Y, p.Units[i].At.X
	}
	q.Weights = append([]float.Weight(nil), p.Weights...)
	for i := range q.Weights {
		q.Weights[i].At.X, q.Weights[i].At.Y = -p.Weights[i].At.Y, p.Weights[i].At.X
	}
	a, err := p.Motion()
	b, err2 := q.Motion()
	if err != nil || err2 != nil {
		t.Fatal(err, err2)
	}
	for _, c := range []struct{ x, y float64 }{
		{a.Heave.Longest, b.Heave.Longest}, {a.Roll.Longest, b.Pitch.Longest}, {a.Pitch.Shortest, b.Roll.Shortest},
	} {
		if math.Abs(c.x/c.y-1) > 1e-9 {
			t.Errorf("turned by a quarter: %+v and %+v", a, b)
		}
	}
}

// TestMotionPlate checks the other limit of the added mass: a barge of little
// draft moves the water of a flat plate, ρπb²l/8 (Korotkin p. 206, read), and in
// roll ρπb⁴l/256.
func TestMotionPlate(t *testing.T) {
	const l, b, draft, height, rho, g = 20.0, 2.0, 0.01, 0.3, 1000.0, 9.80665
	mass := rho * l * b * draft
	load, err := float.Weight{Mass: mass, At: r3.Vec{}}.Spread(l, b)
	if err != nil {
		t.Fatal(err)
	}
	p := &float.Platform{
		Units: []float.Unit{{Body: float.Block{Length: l, Width: b, Height: height}}}, Weights: load, Density: rho,
	}
	m, err := p.Motion()
	if err != nil {
		t.Fatal(err)
	}
	plate := rho * math.Pi * b * b * l / 8
	heave := 2 * math.Pi * math.Sqrt((mass+plate)/(rho*g*l*b))
	// Weight at mid height, the centre of buoyancy draft/2 over the bottom.
	kg, kb := height/2, draft/2
	stiff := rho*g*l*b*b*b/12 - mass*g*(kg-kb)
	roll := 2 * math.Pi * math.Sqrt((mass*b*b/12+rho*math.Pi*math.Pow(b, 4)*l/256)/stiff)
	if math.Abs(m.Heave.Longest/heave-1) > 1e-9 || math.Abs(m.Roll.Longest/roll-1) > 1e-9 {
		t.Errorf("heave %.6f s, by hand %.6f s; roll %.6f s, by hand %.6f s", m.Heave.Longest, heave, m.Roll.Longest, roll)
	}
}

// TestMotionParts covers what a plain dock has not: a flooded drum, loose water,
// a captive drum held and one let go, a drum fully under, a body of one's own.
func TestMotionParts(t *testing.T) {
	base := func() *float.Platform { return catamaran(0.3, 4, 1.2, 0.4, 4.5, 3) }
	plain, err := base().Motion()
	if err != nil {
		t.Fatal(err)
	}
	tube := float.Cylinder{Diameter: 0.3, Length: 1}
	for _, c := range []struct {
		name   string
		unit   float.Unit
		slower bool // heave is slower than without
	}{
		{"flooded drum under the middle", float.Unit{Body: tube, At: r3.Vec{Z: -0.2}, Mass: 8, Flooded: true}, true},
		{"flooded captive drum", float.Unit{Body: tube, At: r3.Vec{Z: -0.2}, Mass: 8, Flooded: true, Captive: true}, false},
		{"drum fully under, neutral", float.Unit{Body: tube, At: r3.Vec{Z: -1}, Mass: 1000 * math.Pi / 4 * 0.09}, true},
		{"captive drum let go", float.Unit{Body: tube, At: r3.Vec{Z: 0.6}, Mass: 8, Captive: true}, false},
	} {
		p := base()
		p.Units = append(p.Units, c.unit)
		m, err := p.Motion()
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if slower := m.Heave.Longest > plain.Heave.Longest*(1+1e-9); slower != c.slower {
			t.Errorf("%s: heave %g s, without %g s", c.name, m.Heave.Longest, plain.Heave.Longest)
		}
	}

	// A captive drum that pushes is, for small motions, the same as one strapped on
	// whose own weight rides at its axis.
	held, strapped := base(), base()
	u := float.Unit{Body: tube, At: r3.Vec{Z: -0.1}, Mass: 8}
	strapped.Units = append(strapped.Units, u)
	u.Captive = true
	held.Units = append(held.Units, u)
	a, err := held.Motion()
	b, err2 := strapped.Motion()
	if err != nil || err2 != nil || math.Abs(a.Heave.Longest/b.Heave.Longest-1) > 1e-9 {
		t.Errorf("held %+v, strapped %+v, %v, %v", a, b, err, err2)
	}

	// Loose water softens roll.
	dry, wet := base(), base()
	for i := range wet.Units {
		wet.Units[i].Leak = 0.1
		v := wet.Units[i].At
		dry.Weights = append(dry.Weights, float.Weight{Mass: 100, At: r3.Vec{X: v.X, Y: v.Y, Z: v.Z - 0.2}})
	}
	a, err = dry.Motion()
	b, err2 = wet.Motion()
	if err != nil || err2 != nil || !(b.Roll.Longest > a.Roll.Longest) {
		t.Errorf("roll with loose water %+v, with fixed weights %+v, %v, %v", b.Roll, a.Roll, err, err2)
	}
}

// TestMotionCoupled checks that a lopsided dock says that its motions are mixed,
// and that a wave under the dock changes nothing.
func TestMotionCoupled(t *testing.T) {
	p := catamaran(0.3, 4, 1.2, 0.4, 4.5, 3)
	p.Units = append(p.Units, float.Unit{Body: float.Cylinder{Diameter: 0.6, Length: 1}, At: r3.Vec{X: 2, Y: 1.2}, Mass: 15})
	p.Weights = append(p.Weights, float.Weight{Mass: 130, At: r3.Vec{X: 2, Y: 1.2, Z: 1}})
	m, err := p.Motion()
	if err != nil {
		t.Fatal(err)
	}
	if m.Roll.Pure > 0.999 || m.Pitch.Pure > 0.999 || m.Heave.Pure > 0.9999 {
		t.Errorf("a lopsided dock has pure motions: %+v", m)
	}
	p.Wave = &float.Wave{Height: 0.2, Length: 30}
	n, err := p.Motion()
	if err != nil || n != m {
		t.Errorf("on a wave %+v, %v; without %+v", n, err, m)
	}
}

func TestMotionRefuses(t *testing.T) {
	if _, err := (*float.Platform)(nil).Motion(); err == nil {
		t.Error("no platform, yet no error")
	}
	p := catamaran(0.3, 4, 1.2, 0.4, 4.5, 3)
	p.Weights = append(p.Weights, float.Weight{Mass: 5000, At: r3.Vec{Z: 1}})
	if _, err := p.Motion(); !errors.Is(err, float.ErrSinks) {
		t.Errorf("overloaded: %v", err)
	}
	p = catamaran(0.3, 4, 1.2, 0.4, 4.5, 3)
	p.Density = math.NaN()
	if _, err := p.Motion(); !errors.Is(err, measure.ErrRange) {
		t.Errorf("NaN density: %v", err)
	}
	for _, c := range []struct{ a, b float64 }{{0, 1}, {1, 0}, {-1, 1}, {math.NaN(), 1}, {1, math.Inf(1)}, {1e308, 1e-308}} {
		if v, err := float.Period(c.a, c.b); !errors.Is(err, measure.ErrRange) || v != 0 {
			t.Errorf("Period(%g, %g) = %g, %v", c.a, c.b, v, err)
		}
	}
	for _, c := range []struct {
		w    float.Weight
		l, b float64
	}{{float.Weight{Mass: -1}, 1, 1}, {float.Weight{Mass: 1}, -1, 1}, {float.Weight{Mass: 1}, 1, math.NaN()}} {
		if w, err := c.w.Spread(c.l, c.b); !errors.Is(err, measure.ErrRange) || w != nil {
			t.Errorf("%+v: %v, %v", c, w, err)
		}
	}
}

// TestMotionNear checks both ends of the band in which a wave counts as near.
func TestMotionNear(t *testing.T) {
	m := float.Motion{
		Heave: float.Band{Shortest: 1.1, Longest: 1.3, Pure: 1},
		Roll:  float.Band{Shortest: 2, Longest: 2.2, Pure: 1},
		Pitch: float.Band{Shortest: 5, Longest: 6, Pure: 1},
	}
	for _, c := range []struct {
		period float64
		want   string
	}{
		{1.2, "heave"}, // between
		{0.89, ""},     // 1.1/1.2247 = 0.898: just too short
		{0.91, "heave"},
		{1.83, "heave roll"}, // 1.3/0.7071 = 1.838
		{1.85, "roll"},
		{2.5, "roll"},
		{3.5, ""}, // 2.2/0.7071 = 3.11; 5/1.2247 = 4.08
		{5.5, "pitch"},
		{12, ""},
	} {
		warnings, err := m.Near(c.period)
		if err != nil {
			t.Fatal(err)
		}
		var names []string
		for _, w := range warnings {
			for _, name := range []string{"heave", "roll", "pitch"} {
				if strings.Contains(w, "period of "+name) {
					names = append(names, name)
				}
			}
		}
		if got := strings.Join(names, " "); got != c.want {
			t.Errorf("waves of %g s: %q, want %q", c.period, got, c.want)
		}
	}
	for _, bad := range []float64{0, -1, math.NaN(), math.Inf(1), 61} {
		if _, err := m.Near(bad); !errors.Is(err, measure.ErrRange) {
			t.Errorf("period %g: %v", bad, err)
		}
	}
	if _, err := (float.Motion{}).Near(1); !errors.Is(err, measure.ErrUnknown) {
		t.Errorf("zero motion: %v", err)
	}
}

// TestSpread checks mass, centre and second moments of the four weights against
// those of a plate, m l²/12 and m b²/12.
func TestSpread(t *testing.T) {
	const m, l, b = 300.0, 5.0, 2.0
	at := r3.Vec{X: 1, Y: -2, Z: 0.3}
	four, err := float.Weight{Mass: m, At: at}.Spread(l, b)
	if err != nil {
		t.Fatal(err)
	}
	var mass, xx, yy, xy float64
	var moment r3.Vec
	for _, w := range four {
		d := r3.Sub(w.At, at)
		mass += w.Mass
		moment = r3.Add(moment, r3.Scale(w.Mass, d))
		xx, yy, xy = xx+w.Mass*d.X*d.X, yy+w.Mass*d.Y*d.Y, xy+w.Mass*d.X*d.Y
	}
	if mass != m || r3.Norm(moment) > 1e-9 || math.Abs(xx-m*l*l/12) > 1e-9 || math.Abs(yy-m*b*b/12) > 1e-9 || math.Abs(xy) > 1e-9 {
		t.Errorf("mass %g, moment %+v, second moments %g %g %g", mass, moment, xx, yy, xy)
	}
}

// TestMotionAgainstMatrices works a lopsided dock by hand: tubes of several sizes,
// along and across, one deep under water, one open to the lake, floating level since
// its deck is put where that makes it so. Mass and stiffness matrices for (rise of
// the centre of gravity, turns of up toward x and y) are added up below from the
// formulas of a level cylinder; each period must make K - ω²M singular.
func TestMotionAgainstMatrices(t *testing.T) {
	const rho, g = 1000.0, 9.80665
	type tube struct {
		d, l, x, y, z, mass float64
		across, flooded     bool
	}
	tubes := []tube{
		{0.6, 3.0, 0.5, 1.3, -0.05, 40, false, false},
		{0.5, 2.0, -1.0, -1.1, 0.03, 25, false, false},
		{0.58, 0.9, 2.2, -0.9, -0.02, 18, true, false},
		{0.4, 1.5, -1.5, 0.6, -0.9, 30, false, false}, // deep
		{0.3, 0.8, 1.0, -0.4, -0.3, 9, true, true},    // open to the lake
	}
	p := &float.Platform{Density: rho}
	var volume float64
	var buoyancy, moment r3.Vec // of volume, of the tubes' masses
	mass := 0.0
	for _, c := range tubes {
		u := float.Unit{Body: float.Cylinder{Diameter: c.d, Length: c.l}, At: r3.Vec{X: c.x, Y: c.y, Z: c.z}, Mass: c.mass, Flooded: c.flooded}
		if c.across {
			u.Heading = math.Pi / 2
		}
		p.Units = append(p.Units, u)
		mass += c.mass
		moment = r3.Add(moment, r3.Scale(c.mass, u.At))
		if c.flooded {
			continue
		}
		r := c.d / 2
		area, down := math.Pi*r*r, 0.0 // of the wet section, its first moment under the axis
		if -c.z < r {
			q := math.Sqrt(r*r - c.z*c.z)
			area = r*r*math.Acos(c.z/r) - c.z*q
			down = 2 * q * q * q / 3
		}
		volume += area * c.l
		buoyancy = r3.Add(buoyancy, r3.Scale(c.l, r3.Vec{X: area * c.x, Y: area * c.y, Z: area*c.z - down}))
	}
	deck := rho*volume - mass
	at := r3.Scale(1/deck, r3.Sub(r3.Scale(rho, buoyancy), moment))
	at.Z = 0.35
	const length, width = 5.0, 2.5
	plate, err := float.Weight{Mass: deck, At: at}.Spread(length, width)
	if err != nil {
		t.Fatal(err)
	}
	p.Weights = plate
	rest, err := p.Settle()
	if err != nil || math.Abs(rest.Heel)+math.Abs(rest.Trim)+math.Abs(rest.Level) > 1e-9 {
		t.Fatalf("the dock was to float level: %+v, %v", rest, err)
	}
	centre := r3.Scale(1/(rho*volume), r3.Add(moment, r3.Scale(deck, at)))
	m, err := p.Motion()
	if err != nil {
		t.Fatal(err)
	}
	for i, share := range []float64{0.5, 1} {
		var inertia, stiffness [3][3]float64
		rise := func(k *[3][3]float64, by, x, y float64) {
			v := [3]float64{1, x - centre.X, y - centre.Y}
			for a := range 3 {
				for b := range 3 {
					k[a][b] += by * v[a] * v[b]
				}
			}
		}
		body := func(by, x, y, z, xx, yy, zz float64) { // second moments about its own centre, over the mass
			rise(&inertia, by, x, y)
			h := (z-centre.Z)*(z-centre.Z) + zz
			inertia[1][1] += by * (h + xx)
			inertia[2][2] += by * (h + yy)
		}
		body(deck, at.X, at.Y, at.Z, length*length/12, width*width/12, 0)
		tip := rho*volume*centre.Z - rho*buoyancy.Z
		stiffness[1][1] -= g * tip
		stiffness[2][2] -= g * tip
		for _, c := range tubes {
			r := c.d / 2
			along, across := c.l*c.l/12, r*r/2 // of a thin round shell
			xx, yy := along, across
			if c.across {
				xx, yy = across, along
			}
			body(c.mass, c.x, c.y, c.z, xx, yy, across)
			if c.flooded {
				body(rho*math.Pi*r*r*c.l, c.x, c.y, c.z, xx, yy, across)
				continue
			}
			added := rho * math.Pi * r * r * c.l // deep: all it displaces
			if -c.z < r {
				q := math.Sqrt(r*r - c.z*c.z)
				plane := 2 * q * c.l
				wide := 4 * q * q / 12
				px, py := along, wide
				if c.across {
					px, py = wide, along
				}
				rise(&stiffness, rho*g*plane, c.x, c.y)
				stiffness[1][1] += rho * g * plane * px
				stiffness[2][2] += rho * g * plane * py
				added = rho * math.Max((r*r*math.Acos(c.z/r)-c.z*q)*c.l, math.Pi/8*4*q*q*c.l)
			}
			rise(&inertia, share*added, c.x, c.y)
			ax, ay := along, 0.0
			if c.across {
				ax, ay = 0, along
			}
			inertia[1][1] += share * added * ax
			inertia[2][2] += share * added * ay
		}
		for _, band := range []float.Band{m.Heave, m.Roll, m.Pitch} {
			period := band.Shortest
			if i == 1 {
				period = band.Longest
			}
			omega2 := math.Pow(2*math.Pi/period, 2)
			var k [3][3]float64
			size := 1.0
			for a := range 3 {
				for b := range 3 {
					k[a][b] = stiffness[a][b] - omega2*inertia[a][b]
				}
				size *= stiffness[a][a]
			}
			det := k[0][0]*(k[1][1]*k[2][2]-k[1][2]*k[2][1]) - k[0][1]*(k[1][0]*k[2][2]-k[1][2]*k[2][0]) + k[0][2]*(k[1][0]*k[2][1]-k[1][1]*k[2][0])
			if math.Abs(det/size) > 1e-7 {
				t.Errorf("added mass %g: T = %.6f s leaves det(K - ω²M) = %.3g of the stiffness", share, period, det/size)
			}
		}
	}
}

// TestMotionTurned turns a lopsided dock by an odd angle about the vertical: its
// three periods, whatever they are called, stay.
func TestMotionTurned(t *testing.T) {
	p := tubeDock()
	p.Units = append(p.Units, float.Unit{Body: float.Cylinder{Diameter: 0.5, Length: 1}, At: r3.Vec{X: 1.5, Y: 0.3}, Heading: 0.4, Mass: 20})
	p.Units = append(p.Units, float.Unit{Body: float.Block{Length: 1.5, Width: 0.4, Height: 0.3}, At: r3.Vec{X: -1.5, Y: -0.3}, Heading: -0.7, Mass: 30})
	deck, err := float.Weight{Mass: 700, At: r3.Vec{X: 0.1, Z: 0.5}}.Spread(6, 3)
	if err != nil {
		t.Fatal(err)
	}
	p.Weights = deck
	list := func(p *float.Platform) []float64 {
		m, err := p.Motion()
		if err != nil {
			t.Fatal(err)
		}
		out := []float64{m.Heave.Shortest, m.Roll.Shortest, m.Pitch.Shortest}
		slices.Sort(out)
		return out
	}
	want := list(p)
	for _, turn := range []float64{0.6, 2, -1} {
		sin, cos := math.Sincos(turn)
		q := p.With()
		for i := range q.Units {
			v := p.Units[i].At
			q.Units[i].At = r3.Vec{X: cos*v.X - sin*v.Y, Y: sin*v.X + cos*v.Y, Z: v.Z}
			q.Units[i].Heading += turn
		}
		for i := range q.Weights {
			v := p.Weights[i].At
			q.Weights[i].At = r3.Vec{X: cos*v.X - sin*v.Y, Y: sin*v.X + cos*v.Y, Z: v.Z}
		}
		for i, period := range list(q) {
			if math.Abs(period/want[i]-1) > 1e-9 {
				t.Errorf("turned by %g: periods %v, want %v", turn, list(q), want)
			}
		}
	}
}

// TestMotionBlock works the roll of a float of solid foam by hand: its own mass has
// the moment of inertia m (W² + H²)/12.
func TestMotionBlock(t *testing.T) {
	const l, b, h, mass, rho, g = 4.0, 1.5, 0.4, 600.0, 1000.0, 9.80665
	p := &float.Platform{Units: []float.Unit{{Body: float.Block{Length: l, Width: b, Height: h}, Mass: mass}}, Density: rho}
	m, err := p.Motion()
	if err != nil {
		t.Fatal(err)
	}
	draft := mass / (rho * l * b)
	added := math.Max(math.Pi/8*rho*b*b*l, mass)
	for _, c := range []struct {
		name      string
		got       float64
		own, side float64
		turning   float64
	}{
		{"roll", m.Roll.Longest, (b*b + h*h) / 12, b, added * b * b / 32},
		{"pitch", m.Pitch.Longest, (l*l + h*h) / 12, l, added * l * l / 12},
	} {
		stiff := rho*g*l*b*c.side*c.side/12 - mass*g*(h/2-draft/2)
		want := 2 * math.Pi * math.Sqrt((mass*c.own+c.turning)/stiff)
		if math.Abs(c.got/want-1) > 1e-9 {
			t.Errorf("%s %.9g s, by hand %.9g s", c.name, c.got, want)
		}
	}
}
