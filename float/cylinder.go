package float

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/lumber/measure"
)

// A Cylinder is a round drum or tube with flat ends, lying on its side: its
// axis is its own x axis, its centre the origin. Diameter and Length are the
// outside ones, in metres: what water sees. Hoops, chimes and dents are left
// out; they change the volume by about 1 % (common practice, no source).
type Cylinder struct{ Diameter, Length float64 }

// Volume returns π D² L/4 in m³, by geometry, within 0.5 units in the last place, and
// 0 for sizes that are none: not from 1 mm to 10 km.
// Worst at (0.00972, 0.01355), ordered as in testdata/accuracy.csv.
func (c Cylinder) Volume() float64 {
	if !c.sound() {
		return 0
	}
	return c.all().value()
}

func (c Cylinder) all() twofold {
	r := c.Diameter / 2
	return twofold{r, 0}.times(r).times(c.Length).by(twofoldPi)
}

// Wet returns the integrals over the wet part at any attitude, either end out
// of the water, barely touching, on end, or fully under: segments and hoofs in
// closed form, geometry after Archimedes. The height is in m, up dimensionless.
// See [Body].
//
// A Cylinder of no size from 1 mm to 10 km, a height that is not finite and an up
// without direction have no wet part. Level, volume and plane are within 3.1 units in
// the last place, moments within 4.3, worst at 0.8 of the radius above and below the
// water; tilted within 2.7, second moments within 8.6, of what a rounding of height and
// slope moves.
// Worst at (0.5715, 0.85, 0.11, 0.2, 0.9798), ordered as in testdata/accuracy.csv.
func (c Cylinder) Wet(height float64, up r3.Vec) Wet {
	h, n, ok := level(height, up)
	if !ok || !c.sound() {
		return Wet{}
	}
	r := c.Diameter / 2
	s, m := n.X, math.Hypot(n.Y, n.Z)
	k := cutCylinder(h, s, m, r, c.Length)

	// e points up across the axis, w along the axis laid in the waterplane, b
	// across both. On end, any direction across will do.
	ey, ez := 0.0, 1.0
	if m > 0 {
		ey, ez = n.Y/m, n.Z/m
	}
	w := r3.Vec{X: m, Y: -s * ey, Z: -s * ez}
	b := r3.Vec{Y: -ez, Z: ey}
	foot := r3.Vec{X: -h * n.X, Y: -h * n.Y, Z: -h * n.Z} // the centre, let down to the waterplane

	wet := Wet{
		Volume:       k.v,
		VolumeMoment: r3.Vec{X: k.s, Y: k.t * ey, Z: k.t * ez},
		Plane:        k.w0,
		PlaneMoment: r3.Vec{
			X: foot.X*k.w0 + w.X*k.w1,
			Y: foot.Y*k.w0 + w.Y*k.w1,
			Z: foot.Z*k.w0 + w.Z*k.w1,
		},
	}
	second := func(f1, f2, w1, w2, b1, b2 float64) float64 {
		return f1*f2*k.w0 + (f1*w2+w1*f2)*k.w1 + w1*w2*k.w2 + b1*b2*k.wb
	}
	wet.PlaneInertia = [6]float64{
		second(foot.X, foot.X, w.X, w.X, b.X, b.X),
		second(foot.Y, foot.Y, w.Y, w.Y, b.Y, b.Y),
		second(foot.Z, foot.Z, w.Z, w.Z, b.Z, b.Z),
		second(foot.X, foot.Y, w.X, w.Y, b.X, b.Y),
		second(foot.X, foot.Z, w.X, w.Z, b.X, b.Z),
		second(foot.Y, foot.Z, w.Y, w.Z, b.Y, b.Z),
	}
	return wet
}

// Displaced returns the volume in m³ that the level cylinder displaces at a
// draft in metres, from 0 to the diameter:
//
//	V = L r² (θ - sin θ cos θ),  cos θ = 1 - draft/r
//
// That is the geometry of a segment. It keeps its digits at both ends: within 0.7
// units in the last place, worst at
// 0.416 of the diameter.
// Worst at (1, 1, 0.4161), ordered as in testdata/accuracy.csv.
func (c Cylinder) Displaced(draft float64) (float64, error) {
	if err := c.check(""); err != nil {
		return 0, err
	}
	if err := (measure.Range{Kind: measure.Length, Lo: 0, Hi: c.Diameter}).Check("draft", draft); err != nil {
		return 0, err
	}
	return c.displaced(draft), nil
}

func (c Cylinder) displaced(draft float64) float64 {
	r := c.Diameter / 2
	if draft <= r {
		return segmentVolume(r, c.Length, draft).value()
	}
	return c.all().less(segmentVolume(r, c.Length, c.Diameter-draft)).value()
}

// Draft returns the draft in metres at which the level cylinder displaces a
// volume in m³, from 0 to all of its own: [Cylinder.Displaced] turned round. Up to
// half full it is within 1
// unit in the last place, worst at 0.436 of full; above, where a draft says more
// than its volume can, it is within 1.6 of how far a rounding of the volume moves it.
// Worst at (0.5715, 0.85, 0.218), ordered as in testdata/accuracy.csv.
func (c Cylinder) Draft(volume float64) (float64, error) {
	if err := c.check(""); err != nil {
		return 0, err
	}
	all := c.Volume()
	if err := (measure.Range{Kind: measure.Volume, Lo: 0, Hi: all}).Check("volume", volume); err != nil {
		return 0, err
	}
	r := c.Diameter / 2
	area := volume / (r * r * c.Length)
	if area <= math.Pi/2 {
		h := r * segmentDepth(area)
		if h > 0 { // what rounding took, by the chord
			h += (volume - c.displaced(h)) / (2 * c.Length * math.Sqrt(h*(c.Diameter-h)))
		}
		return min(h, r), nil
	}
	// From the dry side, as displaced reckons it; then to the neighbour that
	// returns the volume best.
	h := c.Diameter - r*segmentDepth(math.Pi-area)
	miss := math.Abs(c.displaced(h) - volume)
	for _, toward := range [2]float64{0, c.Diameter} {
		for range 4 {
			next := math.Nextafter(h, toward)
			d := math.Abs(c.displaced(next) - volume)
			if !(d < miss) {
				break
			}
			h, miss = next, d
		}
	}
	return h, nil
}

// Extent returns the larger of length and diameter in metres. A wave under the
// platform must be long against it.
func (c Cylinder) Extent() float64 { return max(c.Diameter, c.Length) }

func (c Cylinder) sound() bool { return size(c.Diameter) && size(c.Length) }

func (c Cylinder) check(field string) error {
	if err := sizeRange.Check(field+"Diameter", c.Diameter); err != nil {
		return err
	}
	return sizeRange.Check(field+"Length", c.Length)
}
