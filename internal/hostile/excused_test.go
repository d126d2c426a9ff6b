package hostile

// lawful are functions whose documentation says when a result is NaN, with what it means
// there.
var lawful = map[string]string{
	"frame/plan.Plan.Vary":       "a quantity that nobody knows is NaN, and its Known says so",
	"frame/plan.Read":            "a quantity that nobody knows is NaN, and its Known says so",
	"frame.Gap":                  "a support of bad data gives NaN, which every solver refuses",
	"frame.OneWay":               "a support of bad data gives NaN, which every solver refuses",
	"frame.Spring":               "a support of bad data gives NaN, which every solver refuses",
	"frame.Line.At":              "a line without pieces or stiffness has no diagram",
	"frame.Line.Before":          "a line without pieces or stiffness has no diagram",
	"frame.Line.Extremes":        "a line without pieces or stiffness has no diagram",
	"frame.Line.ExtremesWithin":  "a line without pieces or stiffness has no diagram",
	"frame/rack.Frame.Lay":       "a slip that nobody measured is NaN, and every result then is a range",
	"frame/rack.Line.At":         "a line without pieces has no diagram",
	"frame/rack.Line.Before":     "a line without pieces has no diagram",
	"frame/rack.Line.Extremes":   "a line without pieces has no diagram",
	"ice/season.Between":         "outside the holes there is no thickness, and its false says so",
	"ice/season.Guess.By":        "a guess from no dates has no chance",
	"ice.Compare":                "a distance that nobody knows is NaN, and is handed back with the load",
	"ice.Comparison.Spread":      "no opinion, no spread",
	"ice.Sheet.Flooding":         "where the check has no answer, it has no freeboard",
	"ice.Tables":                 "a row of a table that states no mass has none",
	"lumber/measure.Check.Ratio": "it is for sorting, and NaN unless both numbers are positive",
}

// refusing are functions that give an error whatever they are given.
var refusing = map[string]string{
	"frame/plan.Errors.OrNil":            "its error is the list itself",
	"lumber/measure.Check.UnmarshalJSON": "a check is not read back",
	"lumber/measure.RestateError":        "its error is what it was given, in other units",
}

// endless are functions of which an infinity is an answer.
var endless = map[string]string{
	"float/moor.Usual":   "a figure without an upper end is a range that has none",
	"ice.Sheet.Flooding": "a day that the law does not reach is infinitely late",
	"ice.Gauge.Fall":     "a trend that does not cross zero never does",
}

// open are functions that still give NaN without an error, or panic, with the call that
// does it. They are defects; one that is mended has to leave the list.
var open = map[string]string{}
