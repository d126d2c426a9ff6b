package season_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/floewright/ice/season"
)

// TestThreeHolesBeatModelAndHabit: in invented winters whose snow differs from the
// default set's by as much as the filter expects, three holes, each read to 2 cm,
// bring the forecast of the ice five to eight weeks on nearer than the model alone and
// nearer than the last winter's ice on the same date.
func TestThreeHolesBeatModelAndHabit(t *testing.T) {
	m := model(t)
	var corrected, alone, habit, inside float64
	n := 0
	var last []season.State
	for seed := range uint64(40) {
		r := rand.New(rand.NewPCG(seed, 17))
		p := season.Default()
		p.Catch *= math.Exp(0.35 * r.NormFloat64())
		k := math.Exp(0.3 * r.NormFloat64())
		p.OldConductivity *= k
		p.NewConductivity *= k
		days := winter(seed, -13-float64(seed%5), 3, 200)
		lake, err := season.Run(pond, p, days)
		if err != nil {
			t.Fatal(err)
		}
		if last != nil && lake[110].Ice && last[110].Ice {
			var holes []season.Hole
			for _, i := range []int{115, 130, 145} {
				s := lake[i]
				holes = append(holes, season.Hole{Date: s.Date, Clear: math.Max(0, s.Clear+0.02*r.NormFloat64()), White: math.Max(0, s.White+0.01*r.NormFloat64())})
			}
			c, err := m.Correct(days, holes)
			if err != nil {
				t.Fatal(err)
			}
			plain, err := m.Run(days)
			if err != nil {
				t.Fatal(err)
			}
			for i := 180; i < 200; i++ {
				n++
				e := c.Days[i].Total() - lake[i].Total()
				corrected += math.Abs(e)
				alone += math.Abs(plain[i].Total() - lake[i].Total())
				habit += math.Abs(last[i].Total() - lake[i].Total())
				if math.Abs(e) < 1.28*c.Days[i].SD {
					inside++
				}
			}
		}
		last = lake
	}
	f := 1 / float64(n)
	t.Logf("%d days: %.3f m after three holes, %.3f m by the model, %.3f m by habit; %.0f %% in the band of 80 %%", n, corrected*f, alone*f, habit*f, 100*inside*f)
	if n < 400 || !(corrected < 0.6*alone && corrected < 0.6*habit) {
		t.Errorf("%d days: off by %.3f m after three holes, %.3f m by the model, %.3f m by last winter", n, corrected*f, alone*f, habit*f)
	}
	if !(inside*f > 0.7) {
		t.Errorf("%.0f %% of the days lie in the band that should hold 80 %%", 100*inside*f)
	}
}
