package fasten_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/floewright/internal/pinned"
	"example.org/floewright/lumber"
	"example.org/floewright/lumber/fasten"
)

// TestPinned compares invented joints with what they were before: every fastener of the
// tables in pieces of many sizes, single and double, with gaps and washers.
func TestPinned(t *testing.T) {
	all := fasten.Fasteners()
	sizes := []string{"2x6", "2x8", "2x10", "4x4", "6x6"}
	checked := 0
	pinned.Check(t, "joints", 600, func(r *rand.Rand) []any {
		piece := func() fasten.Piece {
			s, err := lumber.Size(sizes[r.IntN(len(sizes))])
			if err != nil {
				t.Fatal(err)
			}
			g, err := lumber.Lookup("Southern Pine", "No.2", s)
			if err != nil {
				t.Fatal(err)
			}
			return fasten.Piece{
				Grade: g, Thickness: s.Width, Width: s.Depth, Angle: []float64{0, math.Pi / 4, math.Pi / 2}[r.IntN(3)], EndGrain: r.IntN(9) == 0,
				Smooth: r.IntN(2) == 0, End: float64(r.IntN(8)) * in / 2, Edge: float64(1+r.IntN(8)) * in / 4, Away: r.IntN(2) == 0,
			}
		}
		j := fasten.Joint{
			Fastener: all[r.IntN(len(all))], Main: piece(), Side: piece(), Double: r.IntN(4) == 0, Toe: r.IntN(9) == 0,
			PerRow: 1 + r.IntN(3), Rows: 1 + r.IntN(2), Spacing: float64(r.IntN(9)) * in / 2, Between: float64(1+r.IntN(5)) * in / 2,
			Shank: r.IntN(2) == 0, Prebored: r.IntN(2) == 0, Service: fasten.Service{Seasoned: r.IntN(2) == 0, Temperature: []float64{20, 50}[r.IntN(2)]},
		}
		if r.IntN(4) == 0 {
			j.Gap = float64(1+r.IntN(4)) * in / 8
		}
		if f := &j.Fastener; f.Length == 0 {
			f.Length = float64(4+r.IntN(24)) * in / 2
		}
		y, err := j.Yield()
		checks, err2 := j.Check(fasten.Demand{Lateral: float64(100 * r.IntN(20)), Withdrawal: float64(50 * r.IntN(10))}, lumber.TenYears)
		if err2 == nil {
			checked++
		}
		room, err3 := j.Geometry()
		rows, items, err4 := fasten.Schedule([]fasten.Place{{Name: "corner", Joint: j, Alike: 1 + r.IntN(9), Finish: "hot-dip galvanized"}}, fasten.Exposure{Treatment: "MCA", Fresh: true, Drains: true})
		return []any{y, err, checks, err2, room, err3, rows, items, err4}
	})
	if checked < 200 {
		t.Errorf("only %d were checked", checked)
	}
}
