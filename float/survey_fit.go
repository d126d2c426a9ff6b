package float

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/lumber/measure"
)

// A deckFit is the attitude at which the corners of the deck stand nearest to
// their measured heights, with its covariance (of level, up.X, up.Y).
type deckFit struct {
	up         r3.Vec
	level      float64
	residuals  []float64
	covariance matrix3
}

// fitDeck finds it by weighted least squares. A corner r stands n·r + d above the
// water; Gauss's method in (d, n_x, n_y) has the rows 1, x - z n_x/n_z,
// y - z n_y/n_z.
func fitDeck(corners []r3.Vec, heights, accuracy []float64) (deckFit, error) {
	// About the corners' middle, so that the three unknowns hardly mix.
	var middle r3.Vec
	for _, c := range corners {
		middle = r3.Add(middle, r3.Scale(1/float64(len(corners)), c))
	}
	var nx, ny, d float64
	for i, h := range heights {
		d += (h - (corners[i].Z - middle.Z)) / float64(len(heights))
	}
	f := deckFit{residuals: make([]float64, len(heights))}
	var inverse matrix3
	for range 50 {
		nz := math.Sqrt(1 - nx*nx - ny*ny)
		if !(nz > 0.2) {
			return f, &measure.Error{
				Field: "Freeboards", Class: measure.ErrUnknown, Why: "the corners would stand steeper than any dock",
				Want: "freeboards in the order of Plan.Corners",
			}
		}
		var normal matrix3
		var right [3]float64
		for i, c := range corners {
			r := r3.Sub(c, middle)
			row := [3]float64{1, r.X - r.Z*nx/nz, r.Y - r.Z*ny/nz}
			weight := 4 / (accuracy[i] * accuracy[i])
			e := heights[i] - (nx*r.X + ny*r.Y + nz*r.Z + d)
			f.residuals[i] = e
			normal.add(weight, row)
			for k := range right {
				right[k] += weight * row[k] * e
			}
		}
		var ok bool
		if inverse, ok = normal.inverse(); !ok {
			return f, &measure.Error{
				Field: "Plan.Corners", Class: measure.ErrUnknown, Why: "they lie on one line",
				Want: "three corners or more around the deck",
			}
		}
		step := inverse.times(right)
		d, nx, ny = d+step[0], nx+step[1], ny+step[2]
		if math.Abs(step[1])+math.Abs(step[2]) < 1e-15 {
			break
		}
		if !(nx*nx+ny*ny < 1) {
			nx, ny = 2, 0 // steeper than upright: the next turn says so
		}
	}
	nz := math.Sqrt(1 - nx*nx - ny*ny)
	f.up = r3.Vec{X: nx, Y: ny, Z: nz}
	f.level = d - r3.Dot(f.up, middle)
	// From the middle's height back to that of the origin: d0 = d - n·middle.
	shift := matrix3{
		{1, -middle.X + middle.Z*nx/nz, -middle.Y + middle.Z*ny/nz},
		{0, 1, 0},
		{0, 0, 1},
	}
	f.covariance = shift.product(inverse).product(shift.transposed())
	return f, nil
}

// twist returns the height of the fourth corner over the plane of the other three.
func twist(corners []r3.Vec, heights, accuracy []float64, up r3.Vec) Figure {
	a, b, c := corners[0], corners[1], corners[2]
	u, v, w := r3.Sub(b, a), r3.Sub(c, a), r3.Sub(corners[3], a)
	det := u.X*v.Y - v.X*u.Y
	if !(math.Abs(det) > 1e-12) {
		return Figure{}
	}
	p, q := (w.X*v.Y-v.X*w.Y)/det, (u.X*w.Y-w.X*u.Y)/det
	share := [4]float64{p + q - 1, -p, -q, 1}
	var f Figure
	square := 0.0
	for i, s := range share {
		f.Value += s * (heights[i] - up.Z*corners[i].Z)
		square += s * s * accuracy[i] * accuracy[i]
	}
	f.Within = math.Sqrt(square)
	return f
}

// inverse returns the inverse of a symmetric matrix by its adjugate; false where
// it has none to speak of.
func (m matrix3) inverse() (matrix3, bool) {
	var out matrix3
	for i := range 3 {
		for j := range 3 {
			a, b := (i+1)%3, (i+2)%3
			c, d := (j+1)%3, (j+2)%3
			out[j][i] = m[a][c]*m[b][d] - m[a][d]*m[b][c]
		}
	}
	det := m[0][0]*out[0][0] + m[0][1]*out[1][0] + m[0][2]*out[2][0]
	if !(math.Abs(det) > 1e-12*math.Abs(m[0][0]*m[1][1]*m[2][2])) || math.IsInf(det, 0) {
		return out, false
	}
	for i := range 3 {
		for j := range 3 {
			out[i][j] /= det
		}
	}
	return out, true
}

func (m matrix3) times(v [3]float64) [3]float64 {
	var out [3]float64
	for i := range 3 {
		for j := range 3 {
			out[i] += m[i][j] * v[j]
		}
	}
	return out
}

func (m matrix3) product(o matrix3) matrix3 {
	var out matrix3
	for i := range 3 {
		for j := range 3 {
			for k := range 3 {
				out[i][j] += m[i][k] * o[k][j]
			}
		}
	}
	return out
}

func (m matrix3) transposed() matrix3 {
	var out matrix3
	for i := range 3 {
		for j := range 3 {
			out[i][j] = m[j][i]
		}
	}
	return out
}

// quadratic returns v·m v.
func (m matrix3) quadratic(v [3]float64) float64 {
	w := m.times(v)
	return v[0]*w[0] + v[1]*w[1] + v[2]*w[2]
}
