package frame

import (
	"math/rand/v2"
	"testing"
)

// width is how far joined things lie from each other at most.
func width(place []int, joined [][]int) int {
	most := 0
	for i, js := range joined {
		for _, j := range js {
			most = max(most, place[i]-place[j])
		}
	}
	return most
}

// However the nodes are numbered, those of a row follow each other, and those of a
// deck lie no farther apart than across it, and one more.
func TestNarrow(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 3))
	for _, c := range []struct{ long, wide, most int }{{30, 1, 1}, {30, 2, 3}, {20, 4, 6}, {15, 3, 5}} {
		for range 40 {
			number := r.Perm(c.long * c.wide)
			at := func(i, j int) int { return number[i*c.wide+j] }
			joined := make([][]int, len(number))
			join := func(a, b int) { joined[a], joined[b] = append(joined[a], b), append(joined[b], a) }
			for i := range c.long {
				for j := range c.wide {
					if i > 0 {
						join(at(i-1, j), at(i, j))
					}
					if j > 0 {
						join(at(i, j-1), at(i, j))
					}
				}
			}
			place := narrow(len(number), joined)
			seen := make([]bool, len(place))
			for _, p := range place {
				seen[p] = true
			}
			for p, ok := range seen {
				if !ok {
					t.Fatalf("nothing is at place %d", p)
				}
			}
			if got := width(place, joined); got > c.most {
				t.Fatalf("%d by %d: joined ones lie %d apart, want at most %d", c.long, c.wide, got, c.most)
			}
		}
	}
	// From a wheel's rim as from its hub, with a spoke made long.
	var star [][]int
	for i := range 9 {
		star = append(star, nil)
		if i > 0 {
			j := []int{0, 0, 0, 0, 0, 0, 5, 6, 7}[i]
			star[i], star[j] = append(star[i], j), append(star[j], i)
		}
	}
	if end := farthest(0, star, make([]int, 9)); end != 8 {
		t.Errorf("the farthest from the hub is %d", end)
	}
	if got := farthest(3, [][]int{{1, 2}, {0}, {0, 3}, {2}, {5}, {4}}, make([]int, 6)); got != 1 {
		t.Errorf("the farthest of a row is %d", got)
	}
	// As far as another, but with fewer neighbours.
	if got := farthest(0, [][]int{{1, 2}, {0, 3, 4}, {0, 5}, {1, 4}, {1, 3}, {2}}, make([]int, 6)); got != 5 {
		t.Errorf("the farthest with few neighbours is %d", got)
	}
}
