package published

import (
	"fmt"
	"math"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

const lumberPackage = "lumber"

// lumberChecks gathers the checks of package lumber, one function per table.
func lumberChecks() ([]Check, error) {
	var all []Check
	for _, set := range []func() ([]Check, error){
		lumberSizes, lumberTorsion, lumberFactors, lumberLengths, lumberColumns, lumberExamples,
		lumberJoists, lumberDeckJoists, lumberDeckBeams, lumberBoards, lumberDecking, lumberDensity, lumberPoreFull, lumberCutChecks, lumberBored, lumberMore,
	} {
		checks, err := set()
		if err != nil {
			return nil, fmt.Errorf("lumber: %w", err)
		}
		all = append(all, checks...)
	}
	return all, nil
}

// lumberSource returns a source with the status of a table's word.
func lumberSource(title, edition, locator, word string) (measure.Source, error) {
	st, err := status(word)
	return measure.Source{Title: title, Edition: edition, Locator: locator, Status: st}, err
}

// deviation sets a row's own limit where the table has one.
func (r row) deviation(c *Check) error {
	c.Because, c.Doubt = r["because"], r["doubt"]
	if c.Because == "" {
		return nil
	}
	within, err := r.num("within")
	c.Within = within
	return err
}

// independent is the status of values computed by another program.
func independent(title, locator string) measure.Source {
	return measure.Source{Title: title, Locator: locator, Status: measure.Independent}
}

// psiOf returns a value of one's own, for examples that give a stress.
func psiOf(x float64) lumber.Value {
	return lumber.Value{Printed: x, Unit: measure.PSI, Source: &measure.Source{Title: "the example", Status: measure.Read}}
}

// safe is the square root for spans by bending.
func safe(x float64) float64 { return math.Sqrt(math.Max(0, x)) }
