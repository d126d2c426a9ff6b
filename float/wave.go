package float

import (
	"math"
	"strconv"

	"gonum.org/v1/gonum/spatial/r3"

	"example.org/floewright/lumber/measure"
)

// A Wave is a long regular wave standing still under the platform, a snapshot:
//
//	η = ½ Height cos(2π (x cos Heading + y sin Heading)/Length - Phase)
//
// Each unit sees the water level and slope under its own centre, with the
// pressure of the depth below that surface; the platform rests on it without
// inertia. That holds for waves much longer than a drum: shorter than five
// times the longest body is refused.
type Wave struct {
	Height  float64 // trough to crest, m
	Length  float64 // crest to crest, m
	Heading float64 // direction of travel, rad from the platform's x axis
	Phase   float64 // rad; 0 puts a crest at the origin
}

// lengthsPerBody is the shortest wave in lengths of the longest body: over a
// fifth of a wave, level and slope at the centre give the volume to 2 %.
const lengthsPerBody = 5

func (w *Wave) check(units []Unit) error {
	src := &measure.Source{Title: "a wave long against every drum", Status: measure.OwnChoice}
	longest := 0.0
	for i := range units {
		b, ok := units[i].Body.(interface{ Extent() float64 })
		if !ok {
			return &measure.Error{
				Field: "Units[" + strconv.Itoa(i) + "].Body", Class: measure.ErrUnknown,
				Why:  "a wave needs to know how long the body is",
				Want: "a method Extent() float64, m",
			}
		}
		longest = max(longest, b.Extent())
	}
	if err := (measure.Range{Kind: measure.Length, Lo: lengthsPerBody * longest, Hi: 1e5, Source: src}).Check("Wave.Length", w.Length); err != nil {
		return err
	}
	if !(w.Length > 0) {
		return sizeRange.Check("Wave.Length", w.Length)
	}
	// A steeper wave breaks (Michell 1893: height 0.142 of the length; from memory).
	breaks := &measure.Source{Title: "Michell, The highest waves in water", Edition: "1893", Status: measure.Memory}
	if err := (measure.Range{Kind: measure.Length, Lo: 0, Hi: 0.142 * w.Length, Source: breaks}).Check("Wave.Height", w.Height); err != nil {
		return err
	}
	if err := headingRange.Check("Wave.Heading", w.Heading); err != nil {
		return err
	}
	return headingRange.Check("Wave.Phase", w.Phase)
}

// at returns the water's level and slope over a place of the platform.
func (w *Wave) at(x, y float64) (level, slopeX, slopeY float64) {
	sin, cos := math.Sincos(w.Heading)
	k := 2 * math.Pi / w.Length
	s, c := math.Sincos(k*(x*cos+y*sin) - w.Phase)
	a := w.Height / 2
	return a * c, -a * k * s * cos, -a * k * s * sin
}

// level returns the water's level over a place of the platform; a nil wave is
// flat.
func (w *Wave) level(at r3.Vec) float64 {
	if w == nil || !(w.Length > 0) {
		return 0
	}
	l, _, _ := w.at(at.X, at.Y)
	return l
}
