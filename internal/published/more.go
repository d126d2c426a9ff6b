package published

import "example.org/floewright/lumber/measure"

// A one is one value of a source that several values share.
type one struct {
	quantity, printed, unit string
	compute                 func() (float64, error)
}

// share makes the checks of one source. relative is the tolerance of values computed to more
// digits than count; 0 compares with half of the last digit.
func share(pkg string, src measure.Source, relative float64, values ...one) []Check {
	out := make([]Check, len(values))
	for i, v := range values {
		out[i] = Check{
			Package: pkg, Quantity: v.quantity, Source: src, Printed: v.printed, Unit: v.unit,
			Relative: relative, Compute: v.compute,
		}
	}
	return out
}

// exactly is the source of values that follow from a definition by hand; why says how.
func exactly(title, why string) measure.Source {
	return measure.Source{Title: title, Locator: why, Status: measure.Exact}
}
