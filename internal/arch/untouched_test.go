package arch

// Reasons for which no outside check runs a function that gives numbers.
const (
	carries = "lists, picks or carries data, without a formula"
	compare = "compares levels or verdicts, without a formula"
	search  = "repeats a computation that is checked, over places, cases or choices"
	gathers = "gathers what the packages below compute and check, whose checks are those packages'; held by tests by hand and by pins"
	draws   = "draws or lists the numbers that it is given"
	records = "measured on open records of lake ice that are not part of the library: go test ./ice -season-data=DIR"
)

// untouched lists the exported functions and methods that give numbers and that no outside
// check runs, with the reason. A name that is run after all, or is gone, has to leave it.
var untouched = map[string]string{
	"ice/season.Fit":            records,
	"ice/season.Model.Calendar": search,
	"ice/season.Model.Correct":  records,
	"ice/season.Model.Odds":     search,
	"ice/season.Model.Params":   carries,
	"ice/season.Model.Winters":  carries,
	"ice/season.Odds.At":        carries,
	"ice/season.ReadCSV":        carries,
	"ice/season.Tasks":          carries,
	"float.Block.Extent":        carries,
	"float.Cylinder.Extent":     carries,
	"float.Criteria":            carries,
	"float.Drums":               carries,
	"float.Failure.Check":       carries,
	"float.Rules":               carries,

	"float/moor.Lookup":       carries,
	"float/moor.Survey.Worst": carries,

	"frame/dock.Build":            gathers,
	"frame/dock.Compare":          draws,
	"frame/dock.Dock.Crowded":     gathers,
	"frame/dock.Dock.Empty":       gathers,
	"frame/dock.Dock.Envelope":    gathers,
	"frame/dock.Dock.IceAsked":    gathers,
	"frame/dock.Dock.IceBeside":   gathers,
	"frame/dock.Dock.Launch":      gathers,
	"frame/dock.Dock.Layout":      gathers,
	"frame/dock.Dock.Lines":       gathers,
	"frame/dock.Dock.Plate":       search,
	"frame/dock.Dock.Report":      gathers,
	"frame/dock.Dock.Righting":    gathers,
	"frame/dock.Dock.Season":      gathers,
	"frame/dock.Dock.Shape":       carries,
	"frame/dock.Dock.WithWinters": carries,
	"frame/dock.Envelope.Diagram": gathers,
	"frame/dock.Report.Envelope":  carries,
	"frame/dock.Topic.Worst":      compare,

	"frame/plan.Fetch.All": carries,
	"frame/plan.Plan.Vary": carries,

	"frame/sheet.Cutting.Draw":  draws,
	"frame/sheet.Draw":          draws,
	"frame/sheet.Drawn.Picture": carries,
	"frame/sheet.Heeled.Draw":   draws,
	"frame/sheet.Lines.Draw":    draws,
	"frame/sheet.Moments.Draw":  draws,
	"frame/sheet.Plan.Draw":     draws,
	"frame/sheet.Righting.Draw": draws,
	"frame/sheet.Section.Draw":  draws,
	"frame/sheet.Verdicts":      draws,
	"frame/sheet.Winter.Draw":   draws,

	"frame/layout.Layout.On":    carries,
	"frame/layout.Layout.Under": carries,

	"frame/rack.Between.Peak":  carries,
	"frame/rack.Solution.Pull": carries,

	"ice/action.Drags": carries,

	"lumber.Cuts.Offcuts": carries,
	"lumber.Grades":       carries,
	"lumber.Stamp.Lookup": carries,
	"lumber.Weakest":      carries,

	"lumber/fasten.Exposure.Check": compare,
	"lumber/fasten.Schedule":       carries,
}
