package moor_test

import (
	"testing"

	"example.org/floewright/float/moor"
	"example.org/floewright/internal/ulp"
)

// TestAccuracy compares the closed forms with references of 25 digits
// (independent computation, 50 digits). Of a line the catenary's own formulas
// with sinh and asinh, its pull by bisection of its reach; of the waves the
// printed formulas. The bounds lie just above what was measured.
func TestAccuracy(t *testing.T) {
	r := ulp.Open(t, "testdata/accuracy.csv")

	line := func(x []float64) *moor.Line {
		return &moor.Line{Pieces: []moor.Piece{{Length: x[0], Weight: x[1]}}}
	}
	rope := func(x []float64) *moor.Line {
		return &moor.Line{Pieces: []moor.Piece{{Length: x[0], Weight: x[1], Stretch: x[2]}}, Shore: true}
	}
	r.Within(4.5, "Line.Pull reach", func(x []float64) (float64, error) {
		h, err := line(x).Pull(x[2], x[3])
		return h.Reach, err
	})
	r.Within(1.5, "Line.Pull down", func(x []float64) (float64, error) {
		h, err := line(x).Pull(x[2], x[3])
		return h.Down, err
	})
	r.Within(2.5, "Line.At pull", func(x []float64) (float64, error) {
		h, err := line(x).At(x[2], x[3], moor.Hang{})
		return h.Pull, err
	})
	r.Within(2, "Line.Pull elastic reach", func(x []float64) (float64, error) {
		h, err := rope(x).Pull(x[3], x[4])
		return h.Reach, err
	})
	r.Within(1, "Line.Pull elastic down", func(x []float64) (float64, error) {
		h, err := rope(x).Pull(x[3], x[4])
		return h.Down, err
	})

	r.Within(3, "Sea.Length", func(x []float64) (float64, error) { return moor.Sea{Period: x[0]}.Length(x[1]) })
	sea := func(x []float64) moor.Sea { return moor.Sea{Height: x[0], Period: x[1]} }
	r.Within(3.5, "Sea.Swing", func(x []float64) (float64, error) { return sea(x).Swing(x[2]) })
	r.Within(2, "Sea.Highest", func(x []float64) (float64, error) {
		s, err := sea(x).Highest(x[2])
		return s.Height, err
	})
	r.Within(3, "Sea.Push crest", func(x []float64) (float64, error) {
		crest, _, err := sea(x).Push(x[2], x[3], x[4])
		return crest, err
	})
	r.Within(1.5, "Sea.Push drift", func(x []float64) (float64, error) {
		_, drift, err := sea(x).Push(x[2], x[3], x[4])
		return drift, err
	})
	wake := func(x []float64) (moor.Sea, error) {
		return moor.Wake{Boat: x[0], Height: x[1], Distance: x[2]}.At(x[3], 1e4)
	}
	r.Within(2, "Wake.At height", func(x []float64) (float64, error) {
		s, err := wake(x)
		return s.Height, err
	})
	r.Within(2, "Wake.At period", func(x []float64) (float64, error) {
		s, err := wake(x)
		return s.Period, err
	})
	grown := func(method string) (height, period func(x []float64) (float64, error)) {
		waves := func(x []float64) (moor.Sea, error) {
			return moor.Fetch{Wind: x[0], Length: x[1], Depth: x[2], Duration: x[3]}.Waves(method)
		}
		return func(x []float64) (float64, error) {
				s, err := waves(x)
				return s.Height, err
			}, func(x []float64) (float64, error) {
				s, err := waves(x)
				return s.Period, err
			}
	}
	height, period := grown("SPM 1984")
	r.Within(5.5, "Fetch.Waves SPM 1984 height", height)
	r.Within(4, "Fetch.Waves SPM 1984 period", period)
	height, period = grown("CEM")
	r.Within(5, "Fetch.Waves CEM height", height)
	r.Within(4, "Fetch.Waves CEM period", period)
	height, period = grown("SMB")
	r.Within(5.5, "Fetch.Waves SMB height", height)
	r.Within(4, "Fetch.Waves SMB period", period)
	height, period = grown("revised SMB")
	r.Within(7, "Fetch.Waves revised SMB height", height)
	r.Within(3.5, "Fetch.Waves revised SMB period", period)
	height, period = grown("JONSWAP")
	r.Within(3.5, "Fetch.Waves JONSWAP height", height)
	r.Within(3, "Fetch.Waves JONSWAP period", period)
	height, _ = grown("Stevenson")
	r.Within(2, "Fetch.Waves Stevenson height", height)

	r.Within(5.5, "Wind.To", func(x []float64) (float64, error) {
		w, err := moor.Wind{Speed: x[0], Height: x[1], Averaging: x[2]}.To(x[3], x[4])
		return w.Speed, err
	})
	r.Within(1.5, "Wind.Pressure", func(x []float64) (float64, error) { return moor.Wind{Speed: x[0]}.Pressure() })

	ramp := func(x []float64) moor.Ramp {
		return moor.Ramp{Length: x[0], Width: 1, Shore: x[1], Deck: x[2]}
	}
	r.Within(1.5, "Ramp.Angle", func(x []float64) (float64, error) { return ramp(x).Angle(x[3]) })
	r.Within(5, "Ramp.Slide", func(x []float64) (float64, error) { return ramp(x).Slide(x[3], x[4]) })
	r.Within(1, "Ramp.Needed", func(x []float64) (float64, error) {
		return moor.Ramp{Length: 1, Width: 1, Shore: x[0], Deck: x[1]}.Needed(x[2], x[3])
	})
	heavy := func(x []float64) moor.Ramp { return moor.Ramp{Length: x[0], Width: x[1], Mass: x[2]} }
	r.Within(2, "Ramp.Reaction", func(x []float64) (float64, error) { return heavy(x).Reaction(x[3], x[4]) })
	r.Within(2.5, "Ramp.Moment", func(x []float64) (float64, error) { return heavy(x).Moment(x[3]) })
	r.Within(1.5, "Afloat give", func(x []float64) (float64, error) {
		s, err := moor.Afloat(0, 0.5, x[0], x[1], x[2], x[3])
		return s.Give, err
	})
}
