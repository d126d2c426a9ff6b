package plan

import "example.org/floewright/lumber/measure"

// Season is what is known of the lake's winters, beside a record of temperatures.
type Season struct {
	Latitude  Quantity // north positive
	MeanDepth Quantity // volume over area
	Ons, Outs []Remembered
}

// Remembered is the date on which something was seen in a past year.
type Remembered struct{ When Name }

var seasonFields = []field[Season]{
	quantity("latitude", measure.Angle, "-90 deg", "90 deg", "", "Of the lake, off a map; south is negative.", func(s *Season) *Quantity { return &s.Latitude }),
	quantity("mean_depth", measure.Length, "0.3 m", "200 m", "", "Volume of the lake over its area, off a chart; half of the deepest is a fair guess.", func(s *Season) *Quantity { return &s.MeanDepth }),
	sections("ice_ons", "Dates on which the lake closed in past winters, five or more, one a winter, none to come.", rememberedFields, func(s *Season) *[]Remembered { return &s.Ons }),
	sections("ice_outs", "Dates on which it opened in past winters, five or more, one a winter, none to come: from a diary, the lake's association or a contest.", rememberedFields, func(s *Season) *[]Remembered { return &s.Outs }),
}

var rememberedFields = []field[Remembered]{
	moment("date", `a date such as "2024-04-19"`, "The day; its year counts.", dayForm, func(r *Remembered) *Name { return &r.When }),
}
