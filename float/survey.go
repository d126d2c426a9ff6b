package float

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
	"gonum.org/v1/gonum/stat/distuv"

	"example.org/floewright/lumber/measure"
)

// A Survey is what a tape says of a dock afloat on flat water, and the plan it was
// built by.
type Survey struct {
	Plan       *Platform // the dock without people, gear and snow; Corners are where the tape was held
	Aboard     []Weight  // people, gear and snow that were on it
	Freeboards []Figure  // height over water at each of Plan.Corners, m; Within is the tape's accuracy in the ripple
	Doubt      Doubt     // how far plan and weights may be off
}

// A Finding is what a [Survey] tells. Figures hold 19 times out of 20, if the
// accuracies given do.
type Finding struct {
	Heel, Trim Figure // rad
	Level      Figure // height of the plan's origin over water, m

	Mass   Figure // true mass of the dock without what is aboard, with any water in its drums, kg
	Excess Figure // of that over the plan's, kg

	// Centre is the centre of gravity of the dock without what is aboard, in the
	// plan's axes, m. Freeboards say where it stands over the water, not how high: its
	// height is the plan's. Within is its accuracy along x and y; Shift is how far it
	// lies from the plan's.
	Centre, Within, Shift r3.Vec

	// Residuals are the freeboards less those of the flat deck that fits best, m. Fits
	// is the chance that the tape's accuracy alone gives as much: below 0.05 the frame
	// is twisted or a corner was mismeasured. Three corners always fit.
	Residuals []float64
	Fits      float64

	// Twist, of four corners, is the height of the last one over the plane of the other
	// three, m. Which corner is mismeasured, four cannot tell.
	Twist Figure

	// AsPlanned is the chance that a dock as planned, within its doubts, is measured as
	// far off as this one. Leaks are the drums whose leaking would explain what was
	// measured, the likeliest first; Sound is the chance that none leaks, among what was
	// tried. With AsPlanned below 0.05 and no Leaks nothing that was tried explains it:
	// look for more weight than planned, or more drums than two.
	AsPlanned, Sound float64
	Leaks            []Leak

	Notices []string // that belong to the result
}

var (
	tapeRange = measure.Range{Kind: measure.Length, Lo: 0, Hi: 0.5, OpenLo: true, Source: ownBound}
	aboveMost = measure.Range{Kind: measure.Length, Lo: -10, Hi: 10, Source: ownBound}
)

// Find works back from the freeboards to the dock.
//
// The attitude is the flat deck that fits the freeboards best, each weighted by its
// accuracy. At that attitude the bodies displace a volume V about a centre B, so
// that the whole weighs ρV and its centre of gravity lies on the vertical through
// B: both are exact at any tilt, whatever the plan's weights. What is aboard is
// taken off. Accuracies come through by the slopes of these results.
//
// A drum's leak is judged by what Settle says of the plan with that much loose
// water in it, against the measured attitude, with the tape's accuracy and the
// plan's doubts as they bear on it. The chances hold no drum the likelier to leak
// before measuring, and as likely that none does as that one does, with any amount
// of water; where no single drum explains the attitude, pairs are tried, of 25 drums
// or fewer. The work grows with the square of the number of drums.
//
// Errors are [measure.Error], or a [*Failure] where the plan itself, within its
// doubts, does not float.
func (s Survey) Find() (Finding, error) {
	if err := s.check(); err != nil {
		return Finding{}, err
	}
	plan := s.Plan.With()
	plan.Wave = nil
	heights, accuracy := make([]float64, len(s.Freeboards)), make([]float64, len(s.Freeboards))
	for i, f := range s.Freeboards {
		heights[i], accuracy[i] = f.Value, f.Within
	}
	fit, err := fitDeck(plan.Corners, heights, accuracy)
	if err != nil {
		return Finding{}, err
	}
	out := Finding{Residuals: fit.residuals, Fits: 1, Notices: plan.Notices()}
	chi2 := 0.0
	for i, e := range fit.residuals {
		chi2 += 4 * e * e / (accuracy[i] * accuracy[i]) // Within is two standard deviations
	}
	if free := len(heights) - 3; free > 0 {
		out.Fits = distuv.ChiSquared{K: float64(free)}.Survival(chi2)
	}
	if len(heights) == 4 {
		out.Twist = twist(plan.Corners, heights, accuracy, fit.up)
	}
	if err := s.weigh(&out, plan, fit, heights, accuracy); err != nil {
		return Finding{}, err
	}
	if err := s.leaks(&out, plan, fit); err != nil {
		return Finding{}, err
	}
	return out, nil
}

func (s Survey) check() error {
	if err := s.Plan.check(); err != nil {
		return err
	}
	if err := s.Plan.With(s.Aboard...).check(); err != nil {
		return err
	}
	if len(s.Plan.Corners) < 3 {
		return errEdge
	}
	if len(s.Freeboards) != len(s.Plan.Corners) {
		return &measure.Error{
			Field: "Freeboards", Class: measure.ErrUnknown, Why: "not one for each of the plan's corners",
			Want: "as many freeboards as Plan.Corners",
		}
	}
	for _, f := range s.Freeboards {
		if err := aboveMost.Check("Freeboards", f.Value); err != nil {
			return err
		}
		if err := tapeRange.Check("Freeboards, accuracy", f.Within); err != nil {
			return err
		}
	}
	return s.Doubt.check()
}

// weighing holds the results of one reading of the freeboards.
type weighing struct{ heel, trim, level, mass, excess, x, y float64 }

func (w weighing) list() [7]float64 {
	return [7]float64{w.heel, w.trim, w.level, w.mass, w.excess, w.x, w.y}
}

// weigh fills in attitude, mass and centre, with their accuracies.
func (s Survey) weigh(out *Finding, plan *Platform, fit deckFit, heights, accuracy []float64) error {
	best, planned, err := weighed(plan, s.Aboard, fit)
	if err != nil {
		return err
	}
	if !(best.mass > 0) {
		return &measure.Error{
			Field: "Freeboards", Class: measure.ErrUnknown,
			Why:  "the drums displace less than what is aboard weighs",
			Want: "freeboards, corners and weights that belong together",
		}
	}
	mean, square := best.list(), [7]float64{}
	add := func(lo, hi weighing, factor float64) {
		a, b := lo.list(), hi.list()
		for k := range square {
			d := (b[k] - a[k]) / 2 * factor
			square[k] += d * d
		}
	}
	// The tape, corner by corner.
	const part = 0.1 // of an accuracy: the step of the slopes
	for i := range heights {
		var side [2]weighing
		for k, sign := range []float64{-1, 1} {
			moved := append([]float64(nil), heights...)
			moved[i] += sign * part * accuracy[i]
			f, err := fitDeck(plan.Corners, moved, accuracy)
			if err != nil {
				return err
			}
			if side[k], _, err = weighed(plan, s.Aboard, f); err != nil {
				return err
			}
		}
		add(side[0], side[1], 1/part)
	}
	// The drums and what is aboard. The plan's own weights do not enter the mass.
	for _, v := range s.Doubt.variations(plan, s.Aboard) {
		if !v.measured {
			continue
		}
		var side [2]weighing
		for k, sign := range []float64{-1, 1} {
			p, aboard := v.apply(plan, s.Aboard, sign*part*v.within)
			if side[k], _, err = weighed(p, aboard, fit); err != nil {
				return err
			}
		}
		add(side[0], side[1], 1/part)
	}
	figure := func(k int) Figure { return Figure{Value: mean[k], Within: math.Sqrt(square[k])} }
	out.Heel, out.Trim, out.Level = figure(0), figure(1), figure(2)
	out.Mass, out.Excess = figure(3), figure(4)
	out.Centre = r3.Vec{X: best.x, Y: best.y, Z: planned.Z}
	out.Within = r3.Vec{X: math.Sqrt(square[5]), Y: math.Sqrt(square[6])}
	out.Shift = r3.Sub(out.Centre, planned)
	return nil
}

// weighed returns mass and centre of the dock at a fitted attitude, and the centre
// that the plan gives it.
func weighed(plan *Platform, aboard []Weight, fit deckFit) (w weighing, planned r3.Vec, err error) {
	m, err := plan.model(nil)
	if err != nil {
		return w, planned, err
	}
	n := fit.up
	var s sums
	m.at(n.X, n.Y, n.Z, fit.level, &s)
	w.heel, w.trim = attitude(n.X, n.Y, n.Z)
	w.level = fit.level
	rest := m.rho * s.v
	load := r3.Vec{}
	for _, a := range aboard {
		rest -= a.Mass
		load = r3.Add(load, r3.Scale(a.Mass, a.At))
	}
	w.mass, w.excess = rest, rest-s.mass
	if !(s.mass > 0) {
		return w, planned, massless(s.mass)
	}
	planned = r3.Vec{X: s.gx / s.mass, Y: s.gy / s.mass, Z: s.gz / s.mass}
	if !(rest > 0) {
		return w, planned, nil
	}
	// M G = ρ V B - what is aboard, along e1 and e2; the height of G is the plan's.
	e1, e2 := r3.Vec{X: s.e1x, Y: s.e1y, Z: s.e1z}, r3.Vec{X: s.e2x, Y: s.e2y, Z: s.e2z}
	lift := r3.Sub(r3.Scale(m.rho, r3.Vec{X: s.bx, Y: s.by, Z: s.bz}), load)
	g1, g2 := r3.Dot(e1, lift)/rest, r3.Dot(e2, lift)/rest
	// The point of that vertical at the plan's height in body axes: g1 e1 + g2 e2 + t n.
	t := (planned.Z - g1*e1.Z - g2*e2.Z) / n.Z
	w.x = g1*e1.X + g2*e2.X + t*n.X
	w.y = g1*e1.Y + g2*e2.Y + t*n.Y
	return w, planned, nil
}
