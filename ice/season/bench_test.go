package season_test

import (
	"context"
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

// BenchmarkOdds is the odds from 150 winters.
func BenchmarkOdds(b *testing.B) {
	m, err := season.New(pond, season.Default())
	if err != nil {
		b.Fatal(err)
	}
	past := years(150)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := m.Odds(context.Background(), nil, past, season.Question{Need: 0.2}); err != nil {
			b.Fatal(err)
		}
	}
}
