package float_test

import (
	"errors"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
	"example.org/floewright/lumber/measure"
)

// One dock by hand, from the tape to the verdict, with a pocket calculator, a
// sheet of paper, and no formula of the package. The dock is invented.
//
// The tape. Around a drum 70-11/16 in: D = 70.6875/3.14159 = 22.50 in = 1.8750
// ft. Length 33.5 in = 2.7917 ft. Outside volume 0.78540 × 1.8750² × 2.7917 =
// 7.7083 ft³; in water of 62.4 lb/ft³ it lifts 481.0 lb.
//
// The dock is 8 by 16 ft: four drums in a row under each side, lying along it,
// the rows' centre lines 6 ft apart, the drums' tops touching the frame. Frame
// and deck weigh 1050 lb, in the middle, 5 in above the drums' tops; the deck
// is 9 in above them; a drum weighs 40 lb.
//
// 1. Dead load, level. 1050 + 8 × 40 = 1370 lb on 8 × 481.0 = 3848.0 lb: the
// drums are 0.35603 full. The wet segment is 0.35603 × 0.78540 = 0.27962 D². At
// h = 0.385 D: cos of the half angle 1 - 2 × 0.385 = 0.23, angle 1.33872, sine
// 0.97319, area (1.33872 - 0.23 × 0.97319)/4 = 0.27872 D²; missing 0.00090, over
// the chord of 0.97319 another 0.00092: h = 0.38592 D = 8.683 in.
//
// Water to the frame: 22.50 - 8.683 = 13.82 in. The rule asks for 7 in: holds.
// Water to the deck 22.82 in.
//
// 2. Four hundred pounds on the deck, 6 in from the edge of one long side, 42 in
// from the middle. Water pushes on a round drum toward its axis, whatever the
// heel, so that each row is a support at its axis, 11.25 in below the frame.
// Turned by an angle a, measured along the water, weights above the axes lean
// outward by their height times tan a. About the axis of the high row, 6 ft
// apart:
//
//	low row   160 + [1050 (3 + 1.3542 tan a) + 400 (6.5 + 1.6875 tan a)]/6
//	        = 1118.3 + 349.5 tan a
//	high row  1770 - low row = 651.7 - 349.5 tan a
//
// (heights over the axes 16.25 in = 1.3542 ft and 20.25 in = 1.6875 ft; levers
// over 6 ft, cosines cancel.) A row under water lifts 1924.0 lb. The rows' drafts
// differ by 72 in × sin a. Start with a = 0:
//
//	tan a    low full   h/D      high full  h/D      difference  sin a
//	0        0.58125    0.56400  0.33871    0.37191   4.322 in   0.06003
//	0.06014  0.59218    0.57266  0.32778    0.36300   4.717      0.06552
//	0.06566  0.59318    0.57344  0.32678    0.36218   4.753      0.06602
//	0.06616  0.59327    0.57352  0.32669    0.36211   4.757      0.06606
//
// It heels 3.79 degrees. (Near half full the area is 0.39270 + x - (2/3) x³ for
// h = 0.5 + x; the other column again from 0.385.) The rule of 5 degrees: holds.
//
// 3. The low edge. The low axis is 0.57352 × 22.50 - 11.25 = 1.654 in under. The
// deck's edge is 20.25 in above the axis and 12 in outside: it stands 20.25 cos a
// - 12 sin a - 1.654 = 20.206 - 0.793 - 1.654 = 17.76 in above the water: dry,
// 5.06 in lower than before.
func TestDockByHand(t *testing.T) {
	const in, ft, lb = measure.Inch, measure.Foot, measure.Pound
	drum := float.Cylinder{Diameter: 70.6875 * in / math.Pi, Length: 33.5 * in}
	p := &float.Platform{Density: 62.4 * measure.PCF}
	for _, x := range []float64{-6, -2, 2, 6} {
		for _, y := range []float64{-3, 3} {
			p.Units = append(p.Units, float.Unit{Body: drum, At: r3.Vec{X: x * ft, Y: y * ft, Z: -drum.Diameter / 2}, Mass: 40 * lb})
		}
	}
	p.Weights = []float.Weight{{Mass: 1050 * lb, At: r3.Vec{Z: 5 * in}}}
	for _, c := range [][2]float64{{-8, -4}, {8, -4}, {8, 4}, {-8, 4}} {
		p.Corners = append(p.Corners, r3.Vec{X: c[0] * ft, Y: c[1] * ft, Z: 9 * in})
	}

	s, err := p.Settle()
	if err != nil {
		t.Fatal(err)
	}
	u, err := s.Unit(0)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "share", u.Share, 0.35603, 5e-5)
	near(t, "draft, in", u.Draft/in, 8.683, 1e-3)
	near(t, "water to the frame, in", s.Level/in, 13.82, 5e-3)

	q := p.With(float.Weight{Mass: 400 * lb, At: r3.Vec{Y: 3.5 * ft, Z: 9 * in}})
	h, err := q.Settle()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "heel, deg", h.Heel*180/math.Pi, 3.79, 5e-3)
	low, err := h.Unit(1)
	if err != nil {
		t.Fatal(err)
	}
	high, err := h.Unit(0)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "low row", low.Draft/drum.Diameter, 0.57352, 1e-4)
	near(t, "high row", high.Draft/drum.Diameter, 0.36211, 1e-4)
	_, edge, err := h.Lowest()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "low edge, in", edge/in, 17.76, 5e-3)
}

// An engineer's estimate, for orientation: a 12 by 16 ft dock of 1730 lb on three
// rows of four 55 gal drums floats on 8 in, carries 20 psf at 97 % immersion,
// heels 5.4 degrees with five adults 6 in from a long edge, and finds no
// equilibrium with eight. Where the rows lie and how high its weights are was
// not told; with rows 5 ft apart it is met within what that leaves open.
func TestEngineersEstimate(t *testing.T) {
	const in, ft, lb = measure.Inch, measure.Foot, measure.Pound
	drum := float.Cylinder{Diameter: 22.5 * in, Length: 33.5 * in}
	p := &float.Platform{Density: 1000}
	for _, y := range []float64{-5, 0, 5} {
		for _, x := range []float64{-6, -2, 2, 6} {
			p.Units = append(p.Units, float.Unit{Body: drum, At: r3.Vec{X: x * ft, Y: y * ft, Z: -drum.Diameter / 2}, Mass: 40 * lb})
		}
	}
	p.Weights = []float.Weight{{Mass: (1730 - 480) * lb, At: r3.Vec{Z: 5 * in}}}
	for _, c := range [][2]float64{{-8, -6}, {8, -6}, {8, 6}, {-8, 6}} {
		p.Corners = append(p.Corners, r3.Vec{X: c[0] * ft, Y: c[1] * ft, Z: 9 * in})
	}
	s, err := p.Settle()
	if err != nil {
		t.Fatal(err)
	}
	u, err := s.Unit(5)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "draft, in", u.Draft/in, 8, 0.5)

	full := p.With(float.Weight{Mass: 20 * 12 * 16 * lb, At: r3.Vec{Z: 9 * in}})
	if s, err = full.Settle(); err != nil {
		t.Fatal(err)
	}
	if u, err = s.Unit(5); err != nil {
		t.Fatal(err)
	}
	near(t, "immersion under 20 psf", u.Share, 0.97, 0.01)

	edge := r3.Vec{Y: 5.5 * ft, Z: 9*in + 1}
	if s, err = p.With(float.Weight{Mass: 5 * 185 * lb, At: edge}).Settle(); err != nil {
		t.Fatal(err)
	}
	t.Logf("five adults heel it %.2f deg", s.Heel*180/math.Pi)
	near(t, "heel under five adults, deg", s.Heel*180/math.Pi, 5.4, 1)
	for n := 6; n < 14; n++ {
		s, err = p.With(float.Weight{Mass: float64(n) * 185 * lb, At: edge}).Settle()
		if err != nil {
			t.Logf("%d adults: %v", n, err)
			break
		}
	}
	if !errors.Is(err, float.ErrCapsizes) {
		t.Errorf("thirteen adults: %v", err)
	}
}
