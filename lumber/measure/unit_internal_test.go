package measure

import (
	"strings"
	"testing"
)

// No name may be claimed by two units of one kind, or reading would depend on
// the order of the table.
func TestUnitNamesAreUnique(t *testing.T) {
	seen := map[Kind]map[string]bool{}
	for _, u := range units {
		if seen[u.kind] == nil {
			seen[u.kind] = map[string]bool{}
		}
		for _, name := range strings.Fields(u.names) {
			if seen[u.kind][name] {
				t.Errorf("two units of %v are called %q", u.kind, name)
			}
			seen[u.kind][name] = true
			if got := find(u.kind, strings.ReplaceAll(name, "_", " ")); got == nil || got.scale != u.scale {
				t.Errorf("%v %q finds another unit", u.kind, name)
			}
		}
	}
}
