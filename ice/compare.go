package ice

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/floewright/lumber/measure"
)

// An Opinion is what one source asks for under a load.
type Opinion struct {
	Thickness float64 // m
	Row       string  // the row or class that speaks
	Source    *measure.Source
}

// A Comparison sets the sources side by side, strictest first. It compares;
// it is no rule. The less cautious sources differ from the strictest several
// times over, and no choice of an easier one is justified by finding it here.
type Comparison struct {
	Load     Crossing
	Opinions []Opinion
	Silent   []string // tables and classes that say nothing about such a load
}

// Compare reads every bearing class and every public table for a load that crosses
// clear, cold, uncracked lake ice, each with its source. The error is for a load that
// is none.
func Compare(load Crossing) (Comparison, error) {
	c := Comparison{Load: load}
	if err := load.check(); err != nil {
		return c, err
	}
	load = load.gathered()
	for _, t := range loadTables() {
		row, h := t.byKind(load)
		if r, x := t.byWeight(load); x > h {
			row, h = r, x
		}
		if h == 0 {
			c.Silent = append(c.Silent, t.Name)
			continue
		}
		c.Opinions = append(c.Opinions, Opinion{h, row.Load + ", " + row.Printed, row.Source})
	}
	for _, class := range classes {
		h, err := class.Thickness(load.counted() * measure.Gravity)
		if err != nil {
			c.Silent = append(c.Silent, "class "+class.Name)
			continue
		}
		c.Opinions = append(c.Opinions, Opinion{h, "class " + class.Name + ", " + class.Printed, class.Source})
	}
	slices.SortStableFunc(c.Opinions, func(a, b Opinion) int {
		switch {
		case a.Thickness > b.Thickness:
			return -1
		case a.Thickness < b.Thickness:
			return 1
		}
		return 0
	})
	return c, nil
}

// Spread returns the thinnest and the thickest ice, in m, that the sources ask
// for; both are NaN where all are silent.
func (c Comparison) Spread() (least, most float64) {
	if len(c.Opinions) == 0 {
		return math.NaN(), math.NaN()
	}
	return c.Opinions[len(c.Opinions)-1].Thickness, c.Opinions[0].Thickness
}

// String prints one source a line, strictest first, and the spread.
func (c Comparison) String() string {
	var b strings.Builder
	fmt.Fprintf(&b, "sources compared, %s, clear cold lake ice; no rule:\n", c.Load.label())
	for _, o := range c.Opinions {
		fmt.Fprintf(&b, "%9s  %s (%s)\n", measure.Length.Format(o.Thickness, measure.SI), o.Row, o.Source)
	}
	least, most := c.Spread()
	fmt.Fprintf(&b, "spread: %s to %s\n", measure.Length.Format(least, measure.SI), measure.Length.Format(most, measure.SI))
	return b.String()
}
