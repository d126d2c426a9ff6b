package season_test

import (
	"context"
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
