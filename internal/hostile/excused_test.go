package hostile

// lawful are functions whose documentation says when a result is NaN, with what it means
// there.
var lawful = map[string]string{
	"frame/plan.Plan.Vary":       "a quantity that nobody knows is NaN, and its Known says so",
	"frame/plan.Read":            "a quantity that nobody knows is NaN, and its Known says so",
	"frame/rack.Frame.Lay":       "a slip that nobody measured is NaN, and every result then is a range",
	"frame/rack.Line.At":         "a line without pieces has no diagram",
	"frame/rack.Line.Before":     "a line without pieces has no diagram",
	"frame/rack.Line.Extremes":   "a line without pieces has no diagram",
	"ice/season.Between":         "outside the holes there is no thickness, and its false says so",
	"ice/season.Guess.By":        "a guess from no dates has no chance",
	"ice.Comparison.Spread":      "no opinion, no spread",
	"ice.Sheet.Flooding":         "where the check has no answer, it has no freeboard",
	"ice.Tables":                 "a row of a table that states no mass has none",
	"lumber/measure.Check.Ratio": "it is for sorting, and NaN unless both numbers are positive",
}

// open are functions that still give NaN without an error, or panic, with the call that
// does it. They are defects; one that is mended has to leave the list.
var open = map[string]string{
	// Underflow: subnormal sizes pass the check of their range, and their products are 0.
	"float.Cylinder.Displaced":    "a cylinder of subnormal size",
	"float/moor.Impact.Energy":    "a subnormal radius of gyration",
	"float/moor.Line.Pull":        "a subnormal Weight or Stretch of a piece",
	"float/moor.Mooring.Losses":   "a subnormal Stretch of a piece: in Hang.Stiffness",
	"float/moor.Mooring.Rest":     "a subnormal Stretch of a piece: in Hang.Stiffness",
	"float/moor.Mooring.Survey":   "a subnormal Stretch of a piece: in Hang.Stiffness",
	"frame/rack.Solution.Racking": "a subnormal coordinate in Places",
	"ice.Wave.Critical":           "a subnormal thickness of the plate",
	"ice/action.Drift.Push":       "a subnormal slope of the face",
	"lumber.Board.Under":          "a board of subnormal section",

	// Overflow, without an error to give.
	"float.Cylinder.Volume":    "a diameter of 1.8e308 m",
	"float.Cylinder.Wet":       "a height of 1.8e308 m",
	"frame/sheet.Heeled.Edges": "sizes of 1.8e308 m",

	// Input handed through unchecked, or a result that the caller has changed.
	"float.Drum.Body":            "a drum without diameter, length and volume",
	"float.Drum.Unit":            "a drum without diameter, length and volume",
	"float.State.Unit":           "a state whose Level is NaN",
	"float/moor.Mooring.Forces":  "ties with places that are infinite",
	"float/moor.Sea.Highest":     "a sea whose Grown is NaN: handed through",
	"frame.Line.At":              "a line whose EI or GA is 0 or subnormal, or without pieces",
	"frame.Line.Before":          "a line whose EI or GA is 0 or subnormal, or without pieces",
	"frame.Line.Extremes":        "a line whose EI or GA is 0 or subnormal",
	"frame.Line.ExtremesWithin":  "a line whose EI or GA is 0 or subnormal",
	"frame/dock.Envelope.String": "an envelope whose Situation indexes are out of its list: index out of range",
	"frame/layout.Layout.On":     "a layout whose Members were cut off: index out of range",
	"frame/layout.Layout.Under":  "a layout whose Members were cut off: index out of range",
	"frame/plan.Errors.Error":    "a nil among the errors: nil pointer",
	"frame/plan.Errors.Sort":     "a nil among the errors: nil pointer",
	"ice.Class.Thickness":        "a class whose Range.Lo is NaN",
	"ice.Compare":                "a Distance to others that is NaN: handed through",
}
