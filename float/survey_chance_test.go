package float_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"example.org/floewright/float"
)

// misread adds the tape's errors: normal, two standard deviations the accuracy.
func misread(rng *rand.Rand, clean []float.Figure) []float.Figure {
	f := slices.Clone(clean)
	for i := range f {
		f[i].Value += rng.NormFloat64() * f[i].Within / 2
	}
	return f
}

// TestSurveyChances checks that the chances are chances: over many readings of one
// dock, AsPlanned of a dock as planned, Fits of its frame, and Fits of the leak that
// there is, are spread evenly over 0 to 1, so that their means are 0.50 (standard
// deviation of the mean of 300: 0.017).
func TestSurveyChances(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	plan := drumDock(0)
	leaky := plan.With()
	leaky.Units[1].Leak = 0.07
	clean, wet := taped(t, plan, 0.004), taped(t, leaky, 0.004)
	const n = 300
	var planned, flat, leak, within, found float64
	for range n {
		got, err := float.Survey{Plan: plan, Freeboards: misread(rng, clean), Doubt: certain}.Find()
		if err != nil {
			t.Fatal(err)
		}
		planned += got.AsPlanned / n
		flat += got.Fits / n
		got, err = float.Survey{Plan: plan, Freeboards: misread(rng, wet), Doubt: certain}.Find()
		if err != nil {
			t.Fatal(err)
		}
		i := slices.IndexFunc(got.Leaks, func(l float.Leak) bool { return slices.Equal(l.Units, []int{1}) })
		if i < 0 { // one in twenty fits less than 0.05 and is left out
			leak += 0.025 / n
			continue
		}
		found++
		l := got.Leaks[i]
		leak += l.Fits / n
		if math.Abs(l.Volume[0].Value-0.07) <= l.Volume[0].Within {
			within++
		}
	}
	for _, c := range []struct {
		what string
		mean float64
	}{{"as planned", planned}, {"flat frame", flat}, {"leak", leak}} {
		if math.Abs(c.mean-0.5) > 0.06 {
			t.Errorf("%s: mean chance %.3f, want 0.50 ± 0.06", c.what, c.mean)
		}
	}
	if found < 0.90*n || within < 0.91*found || within > 0.99*found {
		t.Errorf("leak found %g times of %d, its litres in their range %g times", found, n, within)
	}
}

// TestSurveyPairChances does the same for the litres of two leaking drums, whose
// accuracies are of one another's making.
func TestSurveyPairChances(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 6))
	plan := drumDock(0)
	leaky := plan.With()
	leaky.Units[0].Leak, leaky.Units[5].Leak = 0.11, 0.08
	wet := taped(t, leaky, 0.003)
	const n = 150
	var in [2]float64
	found := 0.0
	for range n {
		got, err := float.Survey{Plan: plan, Freeboards: misread(rng, wet), Doubt: certain}.Find()
		if err != nil {
			t.Fatal(err)
		}
		i := slices.IndexFunc(got.Leaks, func(l float.Leak) bool { return slices.Equal(l.Units, []int{0, 5}) })
		if i < 0 {
			continue
		}
		found++
		for k, want := range []float64{0.11, 0.08} {
			if v := got.Leaks[i].Volume[k]; math.Abs(v.Value-want) <= v.Within {
				in[k]++
			}
		}
	}
	if found < 0.85*n || in[0] < 0.88*found || in[1] < 0.88*found || in[0] == found && in[1] == found {
		t.Errorf("pair found %g times of %d, in range %v times", found, n, in)
	}
}
