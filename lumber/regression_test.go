package lumber_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/floewright/lumber"
)

// TestDigits pins the digits of the tables of design values: sums of what is
// printed, each row counting by its place. They are our own numbers, no outside
// check; they tell a digit that was changed from one that was meant.
func TestDigits(t *testing.T) {
	rows := lumber.Grades()
	type sums struct{ Rows, Fb, Ft, Fv, FcPerp, Fc, E, Emin, G int64 }
	got := map[string]sums{}
	for _, g := range rows {
		name := g.Table[:2]
		s := got[name]
		s.Rows++
		for to, v := range map[*int64]lumber.Value{
			&s.Fb: g.Fb, &s.Ft: g.Ft, &s.Fv: g.Fv, &s.FcPerp: g.FcPerp, &s.Fc: g.Fc, &s.E: g.E, &s.Emin: g.Emin,
		} {
			*to += s.Rows * int64(v.Printed)
		}
		s.G += s.Rows * int64(g.G.Printed*100+0.5)
		got[name] = s
	}
	want := map[string]sums{
		"4A": {105, 3534975, 1855400, 769390, 2202760, 4667675, 5751700000, 2103730000, 209327},
		"4B": {53, 1355200, 852150, 250425, 798465, 1871650, 2065400000, 750610000, 78705},
		"4D": {16, 136400, 88525, 20255, 59070, 101700, 177700000, 64730000, 6499},
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("a digit of the tables was changed (-pinned, +now):\n%s", diff)
	}
}
