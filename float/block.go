package float

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// A Block is a rectangular float, such as foam billet or box: Length along its
// own x axis, Width along y, Height along z, in metres, its centre the origin.
type Block struct{ Length, Width, Height float64 }

// Volume returns the volume in m³: the product of the edges, exact, and 0 for sizes that
// are none: not from 1 mm to 10 km.
func (b Block) Volume() float64 {
	if !b.sound() {
		return 0
	}
	return b.Length * b.Width * b.Height
}

// Extent returns the largest edge in metres.
func (b Block) Extent() float64 { return max(b.Length, b.Width, b.Height) }

func (b Block) sound() bool { return size(b.Length) && size(b.Width) && size(b.Height) }

func (b Block) check(field string) error {
	if err := sizeRange.Check(field+"Length", b.Length); err != nil {
		return err
	}
	if err := sizeRange.Check(field+"Width", b.Width); err != nil {
		return err
	}
	return sizeRange.Check(field+"Height", b.Height)
}

// Wet returns the integrals over the wet part at any attitude. See [Body].
//
// The wet part is a polyhedron. Seen from its deepest corner it falls into
// cones over the faces that do not touch that corner: the waterplane and what
// is wet of the three far faces. All parts are positive, so that nothing
// cancels, however small the wet corner: geometry in closed form. The height is
// in m, up is dimensionless.
//
// A Block without positive, finite size, a height that is not finite and an up
// without direction have no wet part.
func (b Block) Wet(height float64, up r3.Vec) Wet {
	h, n, ok := level(height, up)
	if !ok || !b.sound() {
		return Wet{}
	}
	edge := [3]float64{b.Length, b.Width, b.Height}
	dir := [3]float64{n.X, n.Y, n.Z}
	u, sign := dir, [3]float64{1, 1, 1} // mirrored so that the deepest corner is the origin
	depth := -h                         // of that corner
	span := 0.0
	for i := range u {
		if u[i] < 0 {
			u[i], sign[i] = -u[i], -1
		}
		depth += u[i] * edge[i] / 2
		span += u[i] * edge[i]
	}
	if !(depth > 0) {
		return Wet{}
	}
	if depth >= span {
		return Wet{Volume: b.Volume()}
	}

	// The face the waterplane is nearest to.
	k := 0
	for i := range u {
		if u[i] > u[k] {
			k = i
		}
	}
	i, j := (k+1)%3, (k+2)%3
	if rest := u[i]*edge[i] + u[j]*edge[j]; rest <= depth && depth <= u[k]*edge[k] {
		return b.barge(h, dir, i, j, k)
	}

	var volume float64
	var moment [3]float64
	for i := range 3 { // the face x[i] = edge[i]
		j, k := (i+1)%3, (i+2)%3
		p := rectangle(edge[j], edge[k])
		p.cut(u[j], u[k], depth-u[i]*edge[i])
		a, mj, mk := p.first()
		volume += edge[i] * a / 3
		moment[i] += edge[i] * edge[i] * a / 4
		moment[j] += edge[i] * mj / 4
		moment[k] += edge[i] * mk / 4
	}

	// The waterplane, projected on that face, and its cone.
	p := rectangle(edge[i], edge[j])
	p.cut(u[i], u[j], depth)
	p.cut(-u[i], -u[j], -(depth - u[k]*edge[k]))
	var plane float64
	var pm [3]float64
	var pi [3][3]float64
	p.fan(func(area float64, at [3][2]float64) {
		area /= u[k]
		var v [3][3]float64 // the corners in space, and their sum
		var sum [3]float64
		for c := range v {
			v[c][i], v[c][j] = at[c][0], at[c][1]
			v[c][k] = (depth - u[i]*at[c][0] - u[j]*at[c][1]) / u[k]
			for x := range sum {
				v[c][x] -= edge[x] / 2 // about the centre
				sum[x] += v[c][x]
			}
		}
		plane += area
		for x := range sum {
			pm[x] += area * sum[x] / 3
			for y := range sum {
				// ∫ x y over a triangle: A/12 (Σ x Σ y + Σ x y).
				t := sum[x] * sum[y]
				for c := range v {
					t += v[c][x] * v[c][y]
				}
				pi[x][y] += area * t / 12
			}
		}
	})
	volume += depth * plane / 3
	for x := range moment {
		moment[x] += depth * (pm[x] + plane*edge[x]/2) / 4
		moment[x] = sign[x] * (moment[x] - volume*edge[x]/2)
		pm[x] *= sign[x]
	}
	return Wet{
		Volume:       volume,
		VolumeMoment: r3.Vec{X: moment[0], Y: moment[1], Z: moment[2]},
		Plane:        plane,
		PlaneMoment:  r3.Vec{X: pm[0], Y: pm[1], Z: pm[2]},
		PlaneInertia: [6]float64{
			pi[0][0], pi[1][1], pi[2][2],
			sign[0] * sign[1] * pi[0][1], sign[0] * sign[2] * pi[0][2], sign[1] * sign[2] * pi[1][2],
		},
	}
}

// barge is Wet where the water cuts all four edges along k, the common case. It
// is a prism with a sloping end, and nothing cancels as the slope vanishes.
func (b Block) barge(h float64, n [3]float64, i, j, k int) Wet {
	edge := [3]float64{b.Length, b.Width, b.Height}
	area, half := edge[i]*edge[j], edge[k]/2
	z, si, sj := -h/n[k], -n[i]/n[k], -n[j]/n[k] // the surface: z + si x + sj y
	ri, rj := edge[i]*edge[i]/12, edge[j]*edge[j]/12
	sign := math.Copysign(1, n[k])
	f := 1 / math.Abs(n[k])

	var v, pm [3]float64
	v[i], v[j] = sign*area*si*ri, sign*area*sj*rj
	v[k] = sign * area * ((z-half)*(z+half) + si*si*ri + sj*sj*rj) / 2
	pm[k] = f * area * z
	var q [3][3]float64
	q[i][i], q[j][j] = f*area*ri, f*area*rj
	q[i][k], q[j][k] = f*area*si*ri, f*area*sj*rj
	q[k][k] = f * area * (z*z + si*si*ri + sj*sj*rj)
	both := func(a, b int) float64 { return q[a][b] + q[b][a] }
	return Wet{
		Volume:       area * (half + sign*z),
		VolumeMoment: r3.Vec{X: v[0], Y: v[1], Z: v[2]},
		Plane:        f * area,
		PlaneMoment:  r3.Vec{X: pm[0], Y: pm[1], Z: pm[2]},
		PlaneInertia: [6]float64{q[0][0], q[1][1], q[2][2], both(0, 1), both(0, 2), both(1, 2)},
	}
}

// A polygon is a convex one in the plane, of at most eight corners.
type polygon struct {
	at [8][2]float64
	n  int
}

// rectangle returns the polygon from the origin to (a, b), counter-clockwise.
func rectangle(a, b float64) polygon {
	return polygon{at: [8][2]float64{{0, 0}, {a, 0}, {a, b}, {0, b}}, n: 4}
}

// cut keeps the side p x + q y ≤ c.
func (g *polygon) cut(p, q, c float64) {
	var out polygon
	for i := range g.n {
		a, b := g.at[i], g.at[(i+1)%g.n]
		fa, fb := c-p*a[0]-q*a[1], c-p*b[0]-q*b[1]
		if fa >= 0 && out.n < len(out.at) {
			out.at[out.n] = a
			out.n++
		}
		if (fa > 0 && fb < 0 || fa < 0 && fb > 0) && out.n < len(out.at) {
			t := fa / (fa - fb)
			out.at[out.n] = [2]float64{a[0] + t*(b[0]-a[0]), a[1] + t*(b[1]-a[1])}
			out.n++
		}
	}
	*g = out
}

// fan hands out the triangles from the first corner, each with its area.
func (g *polygon) fan(each func(area float64, at [3][2]float64)) {
	for i := 1; i+1 < g.n; i++ {
		o, a, b := g.at[0], g.at[i], g.at[i+1]
		area := ((a[0]-o[0])*(b[1]-o[1]) - (b[0]-o[0])*(a[1]-o[1])) / 2
		each(math.Abs(area), [3][2]float64{o, a, b})
	}
}

// first returns the area and the first moments.
func (g *polygon) first() (area, x, y float64) {
	g.fan(func(a float64, at [3][2]float64) {
		area += a
		x += a * (at[0][0] + at[1][0] + at[2][0]) / 3
		y += a * (at[0][1] + at[1][1] + at[2][1]) / 3
	})
	return area, x, y
}
