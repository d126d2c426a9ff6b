package moor

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// wavePeriod leaves out periods of which no wave number is left in a float64.
var wavePeriod = measure.Range{Kind: measure.Time, Lo: 1e-3, Hi: 1e7, Source: srcSense}

// Length returns the length, m, of the waves in water of the given depth, m:
// L = (gT²/2π) tanh(2πd/L), linear theory. It is within 2.3 units in the last place,
// worst in shallow water.
// Worst at (23.55, 0.1635), ordered as in testdata/accuracy.csv.
func (s Sea) Length(depth float64) (float64, error) {
	if err := first(wavePeriod.Check("wave period", s.Period), positiveLength.Check("depth", depth)); err != nil {
		return 0, err
	}
	return 2 * math.Pi / waveNumber(s.Period, depth), nil
}

// Highest returns the wave that one in a thousand of the sea exceeds, in water of
// the given depth, m, for what must not give way once: 1.859 H/√(1 + H/depth),
// no steeper than 0.142 tanh kd of its length. (CIRIA 1991, in the Coastal
// Engineering Manual, Part II Chapter 8, equation II-9-5; Miche, from memory.)
// Within 1.5 units in the last place.
// Worst at (0.2798, 7.396, 31.44), ordered as in testdata/accuracy.csv.
func (s Sea) Highest(depth float64) (Sea, error) {
	if err := first(
		positiveLength.Check("wave height", s.Height), wavePeriod.Check("wave period", s.Period),
		growing.Check("time to grow", s.Grown), positiveLength.Check("depth", depth),
	); err != nil {
		return Sea{}, err
	}
	k := waveNumber(s.Period, depth)
	breaks := 0.142 * 2 * math.Pi / k * math.Tanh(k*depth)
	s.Height = math.Max(s.Height, math.Min(breaks, 1.859*s.Height/math.Sqrt(1+s.Height/depth)))
	return s, nil
}

// waveNumber solves kd tanh kd = k₀d by Newton from an estimate good to a few
// per cent everywhere; the function is convex there, so it cannot miss.
func waveNumber(period, depth float64) float64 {
	ω := 2 * math.Pi / period
	k0d := ω * ω / measure.Gravity * depth
	kd := k0d / math.Sqrt(math.Tanh(k0d))
	for range 20 {
		t := math.Tanh(kd)
		step := (kd*t - k0d) / (t + kd*(1-t*t))
		kd -= step
		if math.Abs(step) <= 1e-15*kd {
			break
		}
	}
	return kd / depth
}

// steepest is the steepest wave that stands: height a seventh of the length.
var steepest = measure.Range{
	Lo: 0, Hi: 1. / 7, OpenLo: true,
	Source: src("Michell, the highest waves in water", "1893", "steepness 0.142", measure.Memory),
}

// Seen returns the sea a person saw from shore: the height, m, that the higher
// waves keep reaching from trough to crest, and the time, s, in which ten
// crests pass a post after the one at which the watch was started (common practice:
// the eye takes the mean of the highest third). A height
// that no wave of that length reaches is an error: one of the two was misread.
func Seen(height, tenCrests float64) (Sea, error) {
	if err := first(positiveLength.Check("height", height), positiveTime.Check("time of ten crests", tenCrests)); err != nil {
		return Sea{}, err
	}
	period := tenCrests / 10
	deep := measure.Gravity * period * period / (2 * math.Pi)
	if err := steepest.Check("height over length", height/deep); err != nil {
		return Sea{}, err
	}
	return Sea{
		Method: "seen", Height: height, Period: period,
		Source: src("Eye and stopwatch", "", "the eye takes the mean of the highest third", measure.CommonPractice),
	}, nil
}

// Push returns the push of the sea on a float of the given draft, m, standing
// across it in water of the given depth, m, per metre of its width, N/m.
//
// crest is the most, at a crest thrown back whole, linear theory:
//
//	ρgH [sinh kd - sinh k(d-D)]/(k cosh kd) + ρgH²/2
//
// the second term cut at the freeboard, m. It comes and goes with each wave and
// mostly shakes a dock that is free to give way; posts and hinges take it all.
// drift is ρgH²/8, the steady push that lines must take (Maruo; Longuet-Higgins;
// from memory), as of even waves of the height: twice the mean of a real sea of
// that significant height, whose groups swing the dock beyond it. Within 2.5 units
// in the last place.
// Worst at (0.05465, 6.983, 4.54, 0.5974, 0.1209), ordered as in testdata/accuracy.csv.
func (s Sea) Push(depth, draft, freeboard float64) (crest, drift float64, err error) {
	if err := first(
		positiveLength.Check("wave height", s.Height), wavePeriod.Check("wave period", s.Period),
		positiveLength.Check("depth", depth),
		measure.Range{Kind: measure.Length, Lo: 0, Hi: depth, Source: srcSense}.Check("draft", draft),
		lengthOrZero.Check("freeboard", freeboard),
	); err != nil {
		return 0, 0, err
	}
	const ρg = fresh * measure.Gravity
	k := waveNumber(s.Period, depth)
	// sinh kd - sinh k(d-D) over cosh kd, without overflow.
	wet := -math.Expm1(-k*draft) * (1 + math.Exp(-k*(2*depth-draft))) / (1 + math.Exp(-2*k*depth))
	over := math.Max(s.Height-freeboard, 0)
	crest = ρg*s.Height*wet/k + ρg/2*(s.Height*s.Height-over*over)
	return crest, ρg / 8 * s.Height * s.Height, nil
}

// A Wake is the waves of a passing boat, as high as somebody saw them at a
// distance from its track.
type Wake struct {
	Boat     float64 // m/s
	Height   float64 // m, of its highest waves
	Distance float64 // m from the track, where Height was seen
}

// wakeFroude is where a boat's waves are those of deep water.
var wakeFroude = measure.Range{Lo: 0, Hi: 0.7, OpenLo: true, OpenHi: true, Source: src(cem, "Part II Chapter 7", "equation II-7-22", measure.Read)}

// At returns the wake at another distance, m, from the track in water of the given
// depth, m. The highest waves stand where the diverging and the transverse ones meet;
// they run at 35° 16′ to the track, as fast as the boat times the cosine, and their
// height falls with the cube root of the distance. It serves boats slower than 0.7 of
// the speed of the longest waves, √(gd) (Coastal Engineering Manual, Part II Chapter 7,
// equation II-7-22). A height that nobody saw is an error of class measure.ErrUnknown:
// what is published of it by the size of a boat serves ships in canals. Within 1.4 units
// in the last place.
// Worst at (1.771, 0.6288, 31.63, 366.7), ordered as in testdata/accuracy.csv.
func (w Wake) At(distance, depth float64) (Sea, error) {
	if w.Height == 0 {
		return Sea{}, unknown("wake height", "as seen, and at what distance: it is not computed from the boat")
	}
	if err := first(
		measure.Range{Kind: measure.Speed, Lo: 0, Hi: 50, OpenLo: true, Source: srcSense}.Check("speed of the boat", w.Boat),
		positiveLength.Check("wake height", w.Height), positiveLength.Check("distance where it was seen", w.Distance),
		positiveLength.Check("distance", distance), positiveLength.Check("depth", depth),
		wakeFroude.Check("boat speed over √(g depth)", w.Boat/math.Sqrt(measure.Gravity*depth)),
	); err != nil {
		return Sea{}, err
	}
	c := w.Boat * math.Sqrt(2./3) // the cosine of asin 1/√3
	return Sea{
		Method: "wake", Period: 2 * math.Pi * c / measure.Gravity,
		Height: w.Height * math.Cbrt(w.Distance/distance), Source: wakeFroude.Source,
	}, nil
}
