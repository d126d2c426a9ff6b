// Package published holds every outside check of the library as data: a value
// as a published source printed it, or as an independent program computed it,
// beside the call that computes it here. The packages' tests run them.
//
// A printed value is met when the computed one lies within half of the last
// printed digit; an independent computation carries a relative tolerance.
// A deviation that is known and explained is a row with a reason and a limit
// of its own, never a widened tolerance.
package published

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"example.org/floewright/lumber/measure"
)

// A Check is one outside value and the call that should reproduce it.
type Check struct {
	Package  string // "float"
	Quantity string // what is compared, with its inputs: "area at h/D = 0.1"
	Source   measure.Source

	Printed string  // digits as printed, in the printed unit
	Unit    string  // the printed unit's name; "" for a pure number
	Step    float64 // rounding step in the printed unit; 0: the last printed digit

	// Relative replaces the step for an independent computation.
	Relative float64

	// Because explains a known deviation; Within is its own limit, in the
	// printed unit.
	Because string
	Within  float64

	// Doubt says why a printed value is not trusted, or that nothing explains why it is
	// missed. It is shown beside what is computed, compared with nothing, and counts neither
	// as within nor as out.
	Doubt string

	// Carried marks a cell that the library keeps as its source prints it, or such a cell
	// in another unit: the check shows that it was copied and converted well, and proves no
	// formula.
	Carried bool

	// Compute returns the value in the printed unit.
	Compute func() (float64, error)
}

// A Result is the outcome of a check.
type Result struct {
	Printed, Computed float64
	Limit             float64 // largest accepted difference
	Steps             float64 // difference in units of the rounding step
	Within            bool
}

// Name returns the check's citation, fit for a subtest.
func (c Check) Name() string {
	return c.Source.String() + ": " + c.Quantity
}

// carried marks checks of cells that the library keeps.
func carried(checks ...Check) []Check {
	for i := range checks {
		checks[i].Carried = true
	}
	return checks
}

// rounding is the share of a printed value that is given beside half of its last digit, for
// ties and for sources that print more digits than a computation has.
const rounding = 1e-9

// step returns the unit of the last printed digit, or the step the source rounds to.
func (c Check) step() float64 {
	if c.Step > 0 {
		return c.Step
	}
	return lastDigit(c.Printed)
}

// Run computes the check and compares it.
func (c Check) Run() (Result, error) {
	want, err := strconv.ParseFloat(strings.ReplaceAll(c.Printed, ",", ""), 64)
	if err != nil {
		return Result{}, fmt.Errorf("%s: printed value %q is no number", c.Name(), c.Printed)
	}
	got, err := c.Compute()
	if err != nil {
		return Result{Printed: want}, fmt.Errorf("%s: %w", c.Name(), err)
	}
	step := c.step()
	r := Result{Printed: want, Computed: got, Limit: step/2 + rounding*math.Abs(want)}
	switch {
	case c.Because != "":
		r.Limit = c.Within
	case c.Relative > 0:
		r.Limit = c.Relative * math.Abs(want)
	}
	r.Steps = (got - want) / step
	r.Within = math.Abs(got-want) <= r.Limit
	return r, nil
}

// Verify returns nil if the check is met, or doubted and computed.
func (c Check) Verify() error {
	r, err := c.Run()
	if err != nil {
		return err
	}
	if !r.Within && c.Doubt == "" {
		return fmt.Errorf("%s: printed %s %s, computed %.12g, differs by more than %.3g",
			c.Name(), c.Printed, c.Unit, r.Computed, r.Limit)
	}
	return nil
}

// lastDigit returns the unit of the last digit of a printed number: 0.001 for
// "0.250", 1 for "1100", 1e-8 for "1.25e-6".
func lastDigit(printed string) float64 {
	mantissa, exponent, _ := strings.Cut(strings.ToLower(printed), "e")
	power := 0
	if exponent != "" {
		power, _ = strconv.Atoi(exponent)
	}
	if _, decimals, ok := strings.Cut(mantissa, "."); ok {
		power -= len(decimals)
	}
	return math.Pow10(power)
}

// sets lists the checks of each package, in the order they are printed.
var sets = []func() ([]Check, error){
	floatChecks,
	moorChecks,
	lumberChecks,
	fastenChecks,
	measureChecks,
	frameChecks,
	rackChecks,
	layoutChecks,
	dockChecks,
	iceChecks,
	actionChecks,
	seasonChecks,
}

// All returns every outside check of the library.
func All() ([]Check, error) {
	var all []Check
	for _, set := range sets {
		checks, err := set()
		if err != nil {
			return nil, err
		}
		all = append(all, checks...)
	}
	return all, nil
}

// Of returns the checks of one package, named as its path in the module.
func Of(pkg string) ([]Check, error) {
	all, err := All()
	if err != nil {
		return nil, err
	}
	var own []Check
	for _, c := range all {
		if c.Package == pkg {
			own = append(own, c)
		}
	}
	if len(own) == 0 {
		return nil, fmt.Errorf("no outside check for package %s", pkg)
	}
	return own, nil
}
