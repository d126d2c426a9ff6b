package rack_test

import (
	"fmt"
	"math"
	"testing"

	"example.org/floewright/frame/rack"
)

// raft is a frame of 18 nodes: three stringers of six, cross pieces with brackets
// between, a brace in the first bay, on a hinge and a post; a boat pulls at a cleat.
func raft() *rack.Frame {
	f := &rack.Frame{}
	for i := range 6 {
		for j := range 3 {
			f.Nodes = append(f.Nodes, [2]float64{1.2 * float64(i), 1.5 * float64(j)})
		}
	}
	whole := [2]rack.End{rack.Rigid(), rack.Rigid()}
	bracket := rack.End{Turn: 4e3, Along: 2e6, Across: 2e6}
	for j := range 3 {
		f.Members = append(f.Members, rack.Member{Nodes: []int{j, 3 + j, 6 + j, 9 + j, 12 + j, 15 + j}, EA: 7e7, EI: 8e3, Ends: whole})
	}
	for i := range 6 {
		for j := range 2 {
			f.Members = append(f.Members, rack.Member{Nodes: []int{3*i + j, 3*i + j + 1}, EA: 7e7, EI: 8e3, Ends: [2]rack.End{bracket, bracket}})
		}
	}
	f.Members = append(f.Members, rack.Member{Nodes: []int{0, 4}, EA: 3e7, EI: 2e3, Ends: [2]rack.End{bracket, bracket}})
	f.Holds = []rack.Hold{{Node: 0, Along: inf, Across: inf}, {Node: 2, Along: 1e6}}
	f.Forces = []rack.Force{{Node: 15, X: 300, Y: 800}}
	return f
}

// pier is a long frame of two rims with a cross piece and a brace in each bay.
func pier(bays int) *rack.Frame {
	f := &rack.Frame{}
	rims := [2][]int{}
	for i := range bays + 1 {
		for j := range 2 {
			rims[j] = append(rims[j], len(f.Nodes))
			f.Nodes = append(f.Nodes, [2]float64{1.5 * float64(i), 2 * float64(j)})
		}
	}
	pin := [2]rack.End{{Along: 2e6, Across: 2e6}, {Along: 2e6, Across: 2e6}}
	for j := range 2 {
		m := rack.Member{Nodes: rims[j], EA: 7e7, EI: 8e3, Ends: [2]rack.End{rack.Rigid(), rack.Rigid()}}
		if j == 0 {
			m.Loads = []rack.Load{rack.Uniform(0, 1.5*float64(bays), 0, 200)}
		}
		f.Members = append(f.Members, m)
	}
	for i := range bays + 1 {
		f.Members = append(f.Members, rack.Member{Nodes: []int{2 * i, 2*i + 1}, EA: 7e7, EI: 8e3, Ends: pin})
		f.Holds = append(f.Holds, rack.Hold{Node: 2*i + 1, Along: 1e4, Across: 2e5})
		if i > 0 {
			f.Members = append(f.Members, rack.Member{Nodes: []int{2*i - 2, 2*i + 1}, EA: 3e7, EI: 2e3, Ends: pin})
		}
	}
	return f
}

func BenchmarkRaft(b *testing.B) {
	known, blank, decked := raft(), raft(), raft()
	for i := 3; i < len(blank.Members); i++ {
		blank.Members[i].Ends = [2]rack.End{{Turn: 4e3}, {Turn: 4e3}}
	}
	for i := range 20 {
		y := 0.1 + 2.8*float64(i)/19
		if math.Abs(y-1.5) < 0.05 {
			y += 0.06
		}
		board, err := decked.Lay(rack.Board{From: [2]float64{0, y}, To: [2]float64{6, y}, EA: 3e7, EI: 6e4}, 0.09, 1.5e6)
		if err != nil {
			b.Fatal(err)
		}
		decked.Boards = append(decked.Boards, board)
	}
	for _, c := range []struct {
		name string
		f    *rack.Frame
	}{{"known slips", known}, {"two slips not known", blank}, {"20 boards", decked}} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := c.f.Solve(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// BenchmarkBays reports the time of a bay, which stays the same from 10 bays to
// 1,000, and the exponent of the time between the two.
func BenchmarkBays(b *testing.B) {
	each := map[int]float64{}
	for _, n := range []int{10, 100, 1000} {
		b.Run(fmt.Sprintf("bays=%d", n), func(b *testing.B) {
			b.ReportAllocs()
			f := pier(n)
			for b.Loop() {
				if _, err := f.Solve(); err != nil {
					b.Fatal(err)
				}
			}
			each[n] = float64(b.Elapsed().Nanoseconds()) / float64(b.N)
			b.ReportMetric(each[n]/float64(n), "ns/bay")
			if n == 1000 && each[10] > 0 {
				b.ReportMetric(math.Log10(each[n]/each[10])/2, "exponent")
			}
		})
	}
}
