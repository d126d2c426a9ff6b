package float_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/float"
	"example.org/floewright/lumber/measure"
)

// TestSlicesLevel: level, the parts have mass, leak, volume and centre of the
// whole, whatever their number, and from two parts on its waterplane's second
// moment: area times (its own size squared over 12, and its distance squared).
func TestSlicesLevel(t *testing.T) {
	drum := float.Unit{Body: float.Cylinder{Diameter: 0.59, Length: 0.93}, At: r3.Vec{X: 2, Y: -1.1, Z: -0.2}, Heading: 0.7, Mass: 10, Leak: 0.03}
	block := float.Unit{Body: float.Block{Length: 1.4, Width: 1, Height: 0.4}, At: r3.Vec{X: -3, Y: 0.4, Z: 0.1}, Heading: -2, Mass: 24}
	for _, c := range []struct {
		of            float.Unit
		along, across int
		size          float64 // in the direction of turn
		turn          float64 // rad from the unit's x axis
	}{
		{drum, 2, 1, 0.93, 0},
		{drum, 3, 1, 0.93, 0},
		{block, 2, 1, 1.4, 0},
		{block, 3, 2, 1.4, 0},
		{block, 1, 2, 1, math.Pi / 2},
		{block, 2, 3, 1, math.Pi / 2},
	} {
		parts, err := c.of.Slices(c.along, c.across)
		if err != nil || len(parts) != c.along*c.across {
			t.Fatalf("%d by %d: %d parts, %v", c.along, c.across, len(parts), err)
		}
		sin, cos := math.Sincos(c.of.Heading + c.turn)
		moments := func(u float.Unit) [6]float64 {
			w := u.Body.Wet(-0.05, r3.Vec{Z: 1})
			far := u.At.X*cos + u.At.Y*sin
			return [6]float64{u.Mass, u.Leak, w.Volume, w.Plane * u.At.X, w.Plane * u.At.Y, w.Plane * far * far}
		}
		whole, sum := moments(c.of), [6]float64{}
		whole[5] += c.of.Body.Wet(-0.05, r3.Vec{Z: 1}).Plane * c.size * c.size / 12
		for _, p := range parts {
			for i, m := range moments(p) {
				sum[i] += m
			}
		}
		for i := range whole {
			if !(math.Abs(sum[i]-whole[i]) <= 1e-13*(1+math.Abs(whole[i]))) {
				t.Errorf("%v, %d by %d: moment %d is %g, of the whole %g", c.of.Body, c.along, c.across, i, sum[i], whole[i])
			}
		}
	}
}

func TestSlicesRefused(t *testing.T) {
	drum := float.Unit{Body: float.Cylinder{Diameter: 0.59, Length: 0.93}}
	for _, c := range []struct {
		of            float.Unit
		along, across int
		class         error
	}{
		{drum, 2, 2, measure.ErrNotComputed},
		{float.Unit{Body: ball{}}, 2, 1, measure.ErrNotComputed},
		{drum, 0, 1, measure.ErrRange},
		{drum, 1, 4, measure.ErrRange},
		{float.Unit{}, 1, 1, measure.ErrUnknown},
	} {
		if parts, err := c.of.Slices(c.along, c.across); parts != nil || !errors.Is(err, c.class) {
			t.Errorf("%v, %d by %d: %v, %v", c.of.Body, c.along, c.across, parts, err)
		}
	}
	// One part of anything is the thing.
	if parts, err := (float.Unit{Body: ball{}}).Slices(1, 1); err != nil || len(parts) != 1 {
		t.Errorf("%v, %v", parts, err)
	}
}

// TestSlicesAfloat: a platform on slices, pushed a little, answers as on the
// whole drums.
func TestSlicesAfloat(t *testing.T) {
	whole := &float.Platform{Density: 998, Weights: []float.Weight{{Mass: 420, At: r3.Vec{Z: 0.3}}}}
	for _, x := range []float64{-1.6, 0, 1.6} {
		for _, y := range []float64{-0.8, 0.8} {
			whole.Units = append(whole.Units, float.Unit{Body: float.Cylinder{Diameter: 0.59, Length: 0.93}, At: r3.Vec{X: x, Y: y, Z: -0.2}, Heading: math.Pi / 2, Mass: 10})
		}
	}
	cut := *whole
	cut.Units = nil
	for _, u := range whole.Units {
		parts, err := u.Slices(3, 1)
		if err != nil {
			t.Fatal(err)
		}
		cut.Units = append(cut.Units, parts...)
	}
	push := float.Weight{Mass: 0.4, At: r3.Vec{X: 0.3, Y: 0.4, Z: 0.3}}
	a, err := whole.With(push).Settle()
	if err != nil {
		t.Fatal(err)
	}
	b, err := cut.With(push).Settle()
	if err != nil {
		t.Fatal(err)
	}
	// Each part has a small second moment of its own beside that of its place.
	if math.Abs(a.Level-b.Level) > 1e-6 || math.Abs(a.Trim-b.Trim) > 1e-3*a.Trim || !(b.Heel < a.Heel && b.Heel > 0.97*a.Heel) {
		t.Errorf("whole %v, cut %v", a, b)
	}
}

func ExampleUnit_Slices() {
	drum := float.Unit{Body: float.Cylinder{Diameter: 0.59, Length: 0.93}, Mass: 10}
	parts, err := drum.Slices(2, 1)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, p := range parts {
		push, err := p.Support(998)
		if err != nil {
			fmt.Println(err)
			return
		}
		force, stiffness, _ := push(0.3)
		fmt.Printf("at %+.3f m: %.0f N, %.0f N/m\n", p.At.X, force, stiffness)
	}
	// Output:
	// at -0.268 m: 587 N, 2685 N/m
	// at +0.268 m: 587 N, 2685 N/m
}

func FuzzUnit_Slices(f *testing.F) {
	f.Add(0.59, 0.93, 10.0, 0.3, 2, 1)
	f.Add(1e-9, 1e4, 0.0, -7.0, 3, 1)
	f.Fuzz(func(t *testing.T, diameter, length, mass, heading float64, along, across int) {
		u := float.Unit{Body: float.Cylinder{Diameter: diameter, Length: length}, Heading: heading, Mass: mass}
		parts, err := u.Slices(along, across)
		if err != nil {
			if parts != nil {
				t.Error("parts beside an error")
			}
			return
		}
		var volume, heft float64
		for _, p := range parts {
			volume, heft = volume+p.Body.Volume(), heft+p.Mass
		}
		if math.Abs(volume-u.Body.Volume()) > 1e-14*u.Body.Volume() || math.Abs(heft-mass) > 1e-14*mass {
			t.Errorf("volume %g, mass %g of %v in parts", volume, heft, u)
		}
	})
}
