package ice

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// Edge returns the state at a straight free edge (a crack that is open, a slot,
// the end of the sheet) under the middle of a force in N spread over a line of
// half length a in m along the edge. The x axis runs along it; My and Mxy are 0
// there. In units of l, with the transform along the edge:
//
//	w(y) = Re A exp(-λ y),  λ² = ξ² + i,  A = u (1 + i β),  β = (1-ν) ξ²
//	u    = 1/(2 β Re λ + (1 - β²) Im λ)
//	w    = P/(k l²) 1/π ∫ u sin(ξa)/(ξa) dξ,  Mx = P (1-ν²)/π ∫ ξ² u sin(ξa)/(ξa) dξ
//
// which is the free edge of thin-plate theory, no moment and no Kirchhoff shear
// but the load. Westergaard's formula for the deflection, from memory, agrees to
// 2 % (see [Plate.EdgeDeflection]); his stress under a circle that touches the
// edge, whose middle lies inside, is 10 to 25 % less than under the line here.
func (p Plate) Edge(force, a float64) (Bend, error) {
	if err := p.check(); err != nil {
		return Bend{}, err
	}
	if err := rangeForce.Check("force", force); err != nil {
		return Bend{}, err
	}
	l := p.length()
	half := measure.Range{Kind: measure.Length, Lo: rangeSide.Lo, Hi: 10 * l, Source: own("ten characteristic lengths of the plate")}
	if err := half.Check("half length of the load", a); err != nil {
		return Bend{}, err
	}
	nu := p.Nu
	rim := func(xi float64) (w, m float64) {
		root := math.Hypot(xi*xi, 1)
		re := math.Sqrt((root + xi*xi) / 2)
		im := 1 / (2 * re) // (root - ξ²)/2 under the root, without its cancellation
		beta := (1 - nu) * xi * xi
		u := 1 / (2*beta*re + (1-beta)*(1+beta)*im)
		spread := 1.0
		if x := xi * a / l; x > 1e-8 {
			spread = math.Sin(x) / x
		}
		return u * spread, xi * xi * u * spread
	}
	w, m := alternating(rim, math.Pi*l/a)
	return Bend{
		Deflection: force / (p.foundation() * l * l) * w / math.Pi,
		Mx:         force * (1 - nu*nu) * m / math.Pi,
	}, nil
}

var fine = legendre(20)

// alternating integrates two functions from 0 to infinity whose sign changes
// with a step: up to the first change by panels that double, then from change
// to change, and what is left by the means of the partial sums.
func alternating(f func(x float64) (a, b float64), step float64) (a, b float64) {
	panel := func(lo, hi float64) (a, b float64) {
		mid, half := (lo+hi)/2, (hi-lo)/2
		for i := range fine.x {
			u, v := f(mid + half*fine.x[i])
			a, b = a+fine.w[i]*half*u, b+fine.w[i]*half*v
		}
		return a, b
	}
	add := func(lo, hi float64) {
		// No panel is longer than half its distance from 0, or a quarter there.
		for lo < hi {
			to := math.Min(hi, lo+math.Max(0.25, lo/2))
			u, v := panel(lo, to)
			a, b, lo = a+u, b+v, to
		}
	}
	add(0, step)
	const panels = 40
	var sums [2][panels]float64
	for k := range panels {
		add(step*float64(k+1), step*float64(k+2))
		sums[0][k], sums[1][k] = a, b
	}
	for i := range sums {
		for n := panels - 1; n > panels/2; n-- {
			for k := range n {
				sums[i][k] = (sums[i][k] + sums[i][k+1]) / 2
			}
		}
	}
	return sums[0][panels/2], sums[1][panels/2]
}
