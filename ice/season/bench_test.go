package season_test

import (
	"context"
	"fmt"
	"math"
	"testing"

	"example.org/floewright/ice/season"
)

// BenchmarkSeason is one winter of 200 days.
func BenchmarkSeason(b *testing.B) {
	m, err := season.New(pond, season.Default())
	if err != nil {
		b.Fatal(err)
	}
	days := winter(3, -15, 3, 200)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := m.Run(days); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkSeasonStefan is the baseline: the handbooks' square root of the frost so far,
// day by day, which knows no snow and no thaw.
func BenchmarkSeasonStefan(b *testing.B) {
	days := winter(3, -15, 3, 200)
	b.ReportAllocs()
	for b.Loop() {
		frost, most := 0.0, 0.0
		for i := range days {
			frost += max(0, -days[i].Mean)
			most = max(most, 0.034*math.Sqrt(frost))
		}
		if most == 0 {
			b.Fatal("no ice")
		}
	}
}

// BenchmarkOdds is the odds from 15 winters and from 150, and how the time grows between.
func BenchmarkOdds(b *testing.B) {
	m, err := season.New(pond, season.Default())
	if err != nil {
		b.Fatal(err)
	}
	var few float64
	for _, n := range []int{15, 150} {
		past := years(n)
		b.Run(fmt.Sprintf("winters=%d", n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := m.Odds(context.Background(), nil, past, season.Question{Need: 0.2}); err != nil {
					b.Fatal(err)
				}
			}
			each := float64(b.Elapsed().Nanoseconds()) / float64(b.N)
			if n == 15 {
				few = each
			} else if few > 0 {
				b.ReportMetric(math.Log10(each/few), "exponent")
			}
		})
	}
}
