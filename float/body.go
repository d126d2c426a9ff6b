package float

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// A Body is a shape that water pushes on, in axes of its own. [Cylinder] and
// [Block] are bodies; anything else that can tell its wet part may be one.
//
// Wet returns the integrals over the part that lies below a water surface. The
// height of a point r above that surface is height + up·r, with up a unit
// vector; the part where this is negative is wet. It must fall smoothly from
// Volume to nothing as height grows.
//
// Once a [Platform] has a Wave, a body must also have a method Extent() float64, its
// longest measure in m, as Cylinder and Block do: a wave must be long against it.
type Body interface {
	Wet(height float64, up r3.Vec) Wet // of a height in m and a dimensionless up
	Volume() float64                   // m³, all of it: what it displaces when held under
}

// Wet holds the integrals over the wet part of a body and over the waterplane
// that cuts it, in the body's own axes.
type Wet struct {
	Volume       float64    // ∫ dV, m³
	VolumeMoment r3.Vec     // ∫ r dV, m⁴
	Plane        float64    // ∫ dA over the waterplane, m²
	PlaneMoment  r3.Vec     // ∫ r dA, m³
	PlaneInertia [6]float64 // ∫ r rᵀ dA, m⁴: xx yy zz xy xz yz
}

// along returns the second moment of the waterplane for two directions.
func (w *Wet) along(a, b r3.Vec) float64 {
	k := &w.PlaneInertia
	return a.X*b.X*k[0] + a.Y*b.Y*k[1] + a.Z*b.Z*k[2] +
		(a.X*b.Y+a.Y*b.X)*k[3] + (a.X*b.Z+a.Z*b.X)*k[4] + (a.Y*b.Z+a.Z*b.Y)*k[5]
}

// far is a height, m, over and under which every body is all in or all out.
const far = 1e6

// level brings a plane to a unit normal. It returns false where there is no
// plane: up is zero, or one of the numbers is not finite.
func level(height float64, up r3.Vec) (float64, r3.Vec, bool) {
	n := math.Sqrt(up.X*up.X + up.Y*up.Y + up.Z*up.Z)
	if !(n > 0 && n <= math.MaxFloat64 && math.Abs(height) <= math.MaxFloat64) {
		return 0, r3.Vec{}, false
	}
	if n == 1 {
		return min(max(height, -far), far), up, true
	}
	return min(max(height/n, -far), far), r3.Vec{X: up.X / n, Y: up.Y / n, Z: up.Z / n}, true
}
