package layout

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// Wedge returns how a round drum sits between two lower edges of equal height: how
// far its crown rises above them, m; and, for each newton that it pushes up, the
// force on each edge along the drum's radius and the part of that which pushes the
// joists apart. Diameter and opening, the clear width between the edges, are in m.
//
//	sin θ = opening/diameter,  rise = D/2 (1 - cos θ),  press = 1/(2 cos θ),  spread = tan θ/2
//
// As the opening nears the diameter, both forces grow without end; a drum no wider than
// the opening passes through, an error. Geometry and statics without friction, which
// would lower the spread as the drum is pressed in and hold it as the water falls.
// Within 1.5 units in the last place up to the diameter.
// Worst at (0.5715, 0.3426), ordered as in testdata/accuracy.csv.
func Wedge(diameter, opening float64) (rise, press, spread float64, err error) {
	if err := (measure.Range{Kind: measure.Length, Lo: 0.01, Hi: 20, Source: srcFrame}).Check("diameter", diameter); err != nil {
		return 0, 0, 0, err
	}
	if err := (measure.Range{Kind: measure.Length, Lo: 0, Hi: diameter, OpenHi: true, Source: srcWedge}).Check("opening", opening); err != nil {
		return 0, 0, 0, err
	}
	r, half := diameter/2, opening/2
	cos := math.Sqrt((r - half) * (r + half)) // times r
	// r - cos without loss where the opening is small.
	return half * half / (r + cos), r / (2 * cos), half / (2 * cos), nil
}

var srcWedge = &measure.Source{Title: "circle through two points", Status: measure.Exact}

// An edge is a lower edge of a piece beside a drum's axis: its place across and
// its height.
type edge struct{ v, z float64 }

// seated returns the centre of a circle of a radius below two edges, left and
// right, and the angles of its contacts from the vertical; false where it does not
// rest on both.
func seated(r float64, left, right edge) (v, z float64, angle [2]float64, ok bool) {
	dv, dz := right.v-left.v, right.z-left.z
	chord := math.Hypot(dv, dz)
	if !(dv > 0 && chord < 2*r) {
		return 0, 0, angle, false
	}
	below := math.Sqrt((r - chord/2) * (r + chord/2)) // of the centre, off the chord
	v = (left.v+right.v)/2 + below*dz/chord
	z = (left.z+right.z)/2 - below*dv/chord
	angle = [2]float64{math.Atan2(v-left.v, left.z-z), math.Atan2(right.v-v, right.z-z)}
	return v, z, angle, angle[0] > 0 && angle[1] > 0 && angle[0]+angle[1] > tiny
}
