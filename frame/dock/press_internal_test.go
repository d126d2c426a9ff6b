package dock

import (
	"math"
	"testing"
)

// A line load comes to its strip whole and at its place, also where it reaches beyond
// the strip's ends: there it goes to the end.
func TestLineCarriesAll(t *testing.T) {
	r := mustRaft(t, docks(t)["blocks under"])
	st := &r.strips[0]
	first, last := st.at[0], st.at[len(st.at)-1]
	const force = 700.0
	for _, c := range []struct{ from, to float64 }{
		{first, last},
		{first + 0.3, last - 0.4},
		{first - 0.2, last + 0.1},
		{first - 0.3, first + 0.5},
		{last - 0.5, last + 0.3},
		{first - 0.4, first - 0.1},
		{last + 0.1, last + 0.5},
		{1.1, 1.1},
		{first - 0.1, first - 0.1},
	} {
		l, err := r.laden()
		if err != nil {
			t.Fatal(err)
		}
		sum := func() (force, moment float64) {
			for k := 1; k < len(st.at); k++ {
				for _, q := range l.Members[st.first+k-1].Loads {
					f := q.P + q.Q*math.Max(0, q.To-q.From)
					force, moment = force+f, moment+f*(st.at[k-1]+(q.From+math.Max(q.From, q.To))/2)
				}
			}
			return force, moment
		}
		f0, m0 := sum()
		before := l.weight
		l.line(0, c.from, c.to, force, 0.4)
		f, m := sum()
		// The moment by hand: what lies between the ends at its middle, the rest at the ends.
		in := func(x float64) float64 { return math.Min(math.Max(x, first), last) }
		want := force * in(c.from)
		if c.to > c.from {
			q := force / (c.to - c.from)
			a, b := in(c.from), in(c.to)
			want = q * ((b-a)*(a+b)/2 + math.Max(0, math.Min(c.to, first)-c.from)*first + math.Max(0, c.to-math.Max(c.from, last))*last)
		}
		if math.Abs(f-f0-force) > 1e-9 || math.Abs(m-m0-want) > 1e-9 || math.Abs(l.weight-before-force) > 1e-9 {
			t.Errorf("from %g to %g: %g N, %g N·m, by hand %g N, %g N·m", c.from, c.to, f-f0, m-m0, force, want)
		}
	}
}
