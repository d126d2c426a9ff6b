package float

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// sliced integrates a cylinder's wet part with no formula of the package: the
// axis in many pieces, each slice in strips across.
func sliced(c Cylinder, h float64, n r3.Vec) Wet {
	const nx, ny = 400, 400
	var w Wet
	r := c.Diameter / 2
	m := math.Hypot(n.Y, n.Z)
	ey, ez := n.Y/m, n.Z/m
	for i := range nx {
		x := c.Length * ((float64(i)+0.5)/nx - 0.5)
		dx := c.Length / nx
		for j := range ny {
			// strip across the slice: y = r sin φ, width r cos φ dφ
			phi := math.Pi * ((float64(j)+0.5)/ny - 0.5)
			y, half := r*math.Sin(phi), r*math.Cos(phi)
			dy := half * math.Pi / ny
			surf := -(h + n.X*x) / m
			top := math.Min(surf, half)
			if top <= -half {
				continue
			}
			vol := (top + half) * dx * dy
			z := (top - half) / 2
			p := r3.Vec{X: x, Y: z*ey - y*ez, Z: z*ez + y*ey}
			w.Volume += vol
			w.VolumeMoment = r3.Add(w.VolumeMoment, r3.Scale(vol, p))
			if surf < half {
				da := dx * dy / m
				q := r3.Vec{X: x, Y: surf*ey - y*ez, Z: surf*ez + y*ey}
				w.Plane += da
				w.PlaneMoment = r3.Add(w.PlaneMoment, r3.Scale(da, q))
				for k, v := range [6]float64{q.X * q.X, q.Y * q.Y, q.Z * q.Z, q.X * q.Y, q.X * q.Z, q.Y * q.Z} {
					w.PlaneInertia[k] += da * v
				}
			}
		}
	}
	return w
}

func TestCylinderAgainstSlices(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for range 60 {
		c := Cylinder{Diameter: 0.3 + rng.Float64(), Length: 0.3 + 2*rng.Float64()}
		n := r3.Unit(r3.Vec{X: rng.NormFloat64() * math.Pow(10, -3*rng.Float64()), Y: rng.NormFloat64(), Z: rng.NormFloat64()})
		reach := c.Diameter/2*math.Hypot(n.Y, n.Z) + c.Length/2*math.Abs(n.X)
		h := reach * (2*rng.Float64() - 1)
		got, want := c.Wet(h, n), sliced(c, h, n)
		comparable(t, got, want, 4e-4*c.Volume(), 4e-3*c.Diameter*c.Length)
		if t.Failed() {
			t.Fatalf("%+v h %v n %v\n got %+v\nwant %+v", c, h, n, got, want)
		}
	}
}

func comparable(t *testing.T, got, want Wet, volume, area float64) {
	t.Helper()
	near := func(name string, a, b, tol float64) {
		t.Helper()
		if !(math.Abs(a-b) <= tol) {
			t.Errorf("%s: %v, want %v within %v", name, a, b, tol)
		}
	}
	near("volume", got.Volume, want.Volume, volume)
	near("volume moment x", got.VolumeMoment.X, want.VolumeMoment.X, volume)
	near("volume moment y", got.VolumeMoment.Y, want.VolumeMoment.Y, volume)
	near("volume moment z", got.VolumeMoment.Z, want.VolumeMoment.Z, volume)
	near("plane", got.Plane, want.Plane, area)
	near("plane moment x", got.PlaneMoment.X, want.PlaneMoment.X, area)
	near("plane moment y", got.PlaneMoment.Y, want.PlaneMoment.Y, area)
	near("plane moment z", got.PlaneMoment.Z, want.PlaneMoment.Z, area)
	for k := range got.PlaneInertia {
		near("plane inertia", got.PlaneInertia[k], want.PlaneInertia[k], area)
	}
}
