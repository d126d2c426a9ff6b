package float

import "example.org/floewright/lumber/measure"

// A Rule is one criterion.
type Rule func(*Platform) (measure.Check, error)
