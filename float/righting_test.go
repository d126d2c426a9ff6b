package float_test

import (
	"errors"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
	"example.org/floewright/lumber/measure"
)

func steps(to float64, n int) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = to * float64(i) / float64(n-1)
	}
	return out
}

// A box follows the wall-sided formula, GZ = sin a (GM + ½ BM tan² a) (Barrass and
// Derrett, Ship Stability for Masters and Mates; read), while neither its bottom
// nor its deck meets the water.
func TestWallSided(t *testing.T) {
	p := &float.Platform{
		Density: 1000,
		Units:   []float.Unit{{Body: float.Block{Length: 12, Width: 3, Height: 2}}},
		Weights: []float.Weight{{Mass: 36000, At: r3.Vec{Z: 0.2}}},
	}
	bm, bg := 9./12, 0.7
	c, err := p.Righting(0, steps(0.55, 12))
	if err != nil {
		t.Fatal(err)
	}
	for _, k := range c.Points {
		tan := math.Tan(k.Angle)
		near(t, "lever", k.Lever, math.Sin(k.Angle)*(bm-bg+bm*tan*tan/2), 1e-12)
		near(t, "moment", k.Moment, k.Lever*36000*measure.Gravity, 1e-6)
	}
	// About the other axis the same box is long; its weight must lie lower, or it
	// rolls over as it is trimmed.
	p.Weights[0].At.Z, bg = -0.3, 0.2
	c, err = p.Righting(math.Pi/2, []float64{0.05, 0.1})
	if err != nil {
		t.Fatal(err)
	}
	for _, k := range c.Points {
		tan := math.Tan(k.Angle)
		near(t, "lever along", k.Lever, math.Sin(k.Angle)*(12-bg+12*tan*tan/2), 1e-11)
	}
}

func TestRightingMarks(t *testing.T) {
	p := eight().With(float.Weight{Mass: 250, At: r3.Vec{Z: 1}})
	s, err := p.Settle()
	if err != nil {
		t.Fatal(err)
	}
	c, err := p.Righting(0, steps(0.9, 91))
	if err != nil {
		t.Fatal(err)
	}
	if !c.Rest.Found || !c.Under.Found || !c.Peak.Found || !c.Vanishing.Found {
		t.Fatalf("%+v %+v %+v %+v", c.Rest, c.Under, c.Peak, c.Vanishing)
	}
	near(t, "rest", c.Rest.Angle, s.Heel, 1e-10)
	one := func(a float64) float.Point {
		t.Helper()
		c, err := p.Righting(0, []float64{a})
		if err != nil {
			t.Fatal(err)
		}
		return c.Points[0]
	}
	near(t, "edge where it goes under", one(c.Under.Angle).Edge, 0, 1e-10)
	near(t, "lever where it vanishes", one(c.Vanishing.Angle).Lever, 0, 1e-10)
	for _, d := range []float64{-1e-3, 1e-3} {
		if k := one(c.Peak.Angle + d); k.Lever > c.Peak.Lever {
			t.Errorf("lever %v beside the peak %v", k.Lever, c.Peak.Lever)
		}
	}
	// The area is the work: the levers summed by Simpson's rule, each by the
	// cosine of the turn it makes along.
	fine := make([]float64, 2001)
	for i := range fine {
		fine[i] = c.Rest.Angle + (c.Vanishing.Angle-c.Rest.Angle)*float64(i)/2000
	}
	f, err := p.Righting(0, fine)
	if err != nil {
		t.Fatal(err)
	}
	sum := 0.0
	for i, k := range f.Points {
		w := 2.0
		if i%2 == 1 {
			w = 4
		}
		if i == 0 || i == 2000 {
			w = 1
		}
		sum += w * k.Lever * math.Cos(k.Other)
	}
	sum *= (fine[1] - fine[0]) / 3
	near(t, "area", c.Area, sum, 1e-7)

	// Upright at rest, and with the edge under from the start.
	up := eight()
	up.Weights = up.Weights[:1]
	u, err := up.Righting(0, steps(0.5, 11))
	if err != nil {
		t.Fatal(err)
	}
	if !u.Rest.Found || u.Rest.Angle != 0 || u.Vanishing.Found {
		t.Errorf("upright: %+v, %+v", u.Rest, u.Vanishing)
	}
	if u, err = p.Righting(0, []float64{c.Under.Angle + 0.1, c.Under.Angle + 0.2}); err != nil {
		t.Fatal(err)
	}
	if !u.Under.Found || u.Under.Angle != c.Under.Angle+0.1 || u.Rest.Found {
		t.Errorf("under from the start: %+v", u.Under)
	}

	// To the other side the mirrored curve; angles must then rise too.
	m := p.With()
	for i := range m.Weights {
		m.Weights[i].At.Y *= -1
	}
	back, err := m.Righting(0, []float64{-0.3, -0.2, -0.1})
	if err != nil {
		t.Fatal(err)
	}
	for i, a := range []float64{0.3, 0.2, 0.1} {
		near(t, "mirrored lever", back.Points[i].Lever, -one(a).Lever, 1e-10)
	}

	// About an oblique axis as about the long axis of the dock turned under it.
	turned := p.With()
	sin, cos := math.Sincos(-0.6)
	move := func(v r3.Vec) r3.Vec { return r3.Vec{X: v.X*cos - v.Y*sin, Y: v.X*sin + v.Y*cos, Z: v.Z} }
	for i := range turned.Units {
		turned.Units[i].At = move(turned.Units[i].At)
		turned.Units[i].Heading -= 0.6
	}
	for i := range turned.Weights {
		turned.Weights[i].At = move(turned.Weights[i].At)
	}
	for i := range turned.Corners {
		turned.Corners[i] = move(turned.Corners[i])
	}
	a, err := p.Righting(0.6, steps(0.3, 7))
	if err != nil {
		t.Fatal(err)
	}
	b, err := turned.Righting(0, steps(0.3, 7))
	if err != nil {
		t.Fatal(err)
	}
	for i := range a.Points {
		near(t, "lever about an oblique axis", a.Points[i].Lever, b.Points[i].Lever, 1e-10)
		near(t, "edge", a.Points[i].Edge, b.Points[i].Edge, 1e-10)
	}
}

func TestRightingRefuses(t *testing.T) {
	p := eight()
	for _, angles := range [][]float64{{0.2, 0.1}, {math.NaN()}, {0, 1.2}, {-1.2}} {
		if _, err := p.Righting(0, angles); !errors.Is(err, measure.ErrRange) {
			t.Errorf("%v: %v", angles, err)
		}
	}
	if _, err := p.Righting(0, nil); !errors.Is(err, measure.ErrUnknown) {
		t.Errorf("no angles: %v", err)
	}
	if _, err := p.Righting(math.NaN(), []float64{0}); !errors.Is(err, measure.ErrRange) {
		t.Errorf("no axis: %v", err)
	}
	p.Weights[0].Mass = 1e5
	if _, err := p.Righting(0, []float64{0}); !errors.Is(err, float.ErrSinks) {
		t.Errorf("too heavy: %v", err)
	}
	// Tubes along with a high weight: heeled far they go over endways, or the
	// curve says where its other turn stands.
	q := &float.Platform{
		Density: 1000,
		Units: []float.Unit{
			{Body: float.Cylinder{Diameter: 0.6, Length: 1.2}, At: r3.Vec{Y: -3}},
			{Body: float.Cylinder{Diameter: 0.6, Length: 1.2}, At: r3.Vec{Y: 3}},
		},
		Weights: []float.Weight{{Mass: 330, At: r3.Vec{Z: 0.3}}},
		Corners: eight().Corners,
	}
	c, err := q.Righting(0, steps(0.8, 41))
	if !errors.Is(err, float.ErrCapsizes) || len(c.Points) == 0 || len(c.Points) > 40 {
		t.Errorf("%v after %d points", err, len(c.Points))
	}
	// The same angle twice is no fault.
	if c, err = eight().Righting(0, []float64{0.1, 0.1, 0.1, 0.2}); err != nil || c.Points[0].Lever != c.Points[1].Lever && math.Abs(c.Points[0].Lever-c.Points[1].Lever) > 1e-12 {
		t.Errorf("%v %v", c.Points, err)
	}
	// Over a wave too.
	w := eight()
	w.Wave = &float.Wave{Height: 0.1, Length: 30, Heading: 1}
	if _, err := w.Righting(0, steps(0.3, 5)); err != nil {
		t.Error(err)
	}
}

// Regression: a top-heavy raft whose other turn falls over from one balance to the next had
// a rest where its lever leaps from -3.4 to 1.2 m.
func TestNoRestWhereTheLeverLeaps(t *testing.T) {
	p := dockOf(1.2114, 0.85, 6, 7.7, -0.3, 18, 500, 0.05, -0.02, 63.6, 1000, 0x106)
	c, err := p.Righting(0.4, steps(0.9, 9))
	if !errors.Is(err, float.ErrCapsizes) || len(c.Points) < 2 || !(c.Points[0].Lever < -3 && c.Points[1].Lever > 1) {
		t.Fatalf("%v, points %+v: not the case that leapt", err, c.Points)
	}
	if c.Rest.Found {
		t.Errorf("rests at %.4f with a lever of %.3f m", c.Rest.Angle, c.Rest.Lever)
	}
}
