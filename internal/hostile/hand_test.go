package hostile

import (
	"context"
	"sync"

	"example.org/floewright/float"
	"example.org/floewright/float/moor"
	"example.org/floewright/frame"
	"example.org/floewright/frame/layout"
	"example.org/floewright/frame/plan"
	"example.org/floewright/frame/rack"
	"example.org/floewright/frame/sheet"
	"example.org/floewright/ice"
	"example.org/floewright/ice/season"
	"example.org/floewright/lumber"
	"example.org/floewright/lumber/fasten"
)

// byHand returns arguments that reflection cannot invent, by the function's name; the rest
// of a list that is too short is invented after all.
var byHand = sync.OnceValue(func() map[string][]any {
	size := must(lumber.Size("2x8"))
	text := demo(0).text
	storm := moor.Storm(moor.Weather{Wind: moor.Wind{Speed: 11}}.Load)
	levels := []float64{0, -0.3}
	hang := must(mooring().Ties[0].Line.At(7, 3, moor.Hang{}))
	places := raft().Units
	dry := must(float.Rules(float.Deck{Depth: 0.2, Drawn: 0.2, Walk: 0.9}, "deck edge dry"))
	main := layout.Rectangle{Length: 4, Width: 2.4, Marks: []float64{0, 0.6, 1.2, 1.8, 2.36}, Joist: size, Rim: size}
	wing := main
	wing.Name = "wing"
	wing.Corner = layout.Point{}
	return map[string][]any{
		"float.LookupCriterion":     {float.Criteria()[0].Name},
		"float.LookupDrum":          {float.Drums()[0].Name},
		"float.Rules":               {float.Deck{Depth: 0.2, Drawn: 0.2, Walk: 0.9}, []string(nil)},
		"float.MeasureDrum":         {float.Figure{Value: 1.82, Within: 0.01}, float.Figure{Value: 0.88, Within: 0.01}, float.Figure{Value: 18, Within: 1}},
		"float.Cylinder.Draft":      {0.1},
		"float.Cylinder.Displaced":  {0.2},
		"float.Platform.Righting":   {0.0, []float64{0, 0.1, 0.2, 0.3}},
		"float.Platform.SettleFrom": {0.02, 0.01},
		"float.Platform.WorstCrowd": {float.Crowd{People: 1, Each: 84, Height: 1, Inset: 0.3}},
		"float.Platform.Fewest": {context.Background(), places, float.Demand{
			Load: dry, Crowd: float.Crowd{People: 1, Each: 84, Height: 1, Inset: 0.3}, Edge: dry, Lost: dry[:1], Tries: 50,
		}},
		"float.Platform.With": {[]float.Weight{{Mass: 80}}},
		"float.Unit.Slices":   {2, 1},
		"float.Unit.Support":  {1000.0},
		"float.State.Unit":    {1},
		"float.Seal.Pressure": {5.0},
		"float.Seal.Squeeze":  {5.0, 0.3, 1000.0},
		"float.Motion.Near":   {2.0},

		"float/moor.ClipsFor":        {0.0127},
		"float/moor.Factor":          {"end of rope", "eye splice on thimble"},
		"float/moor.Lookup":          {"shackle", "1/2 in"},
		"float/moor.Gears":           {"shackle"},
		"float/moor.Seen":            {0.3, 20.0},
		"float/moor.Line.At":         {7.0, 3.0, moor.Hang{}},
		"float/moor.Line.Pull":       {200.0, 3.0},
		"float/moor.Line.Dip":        {hang},
		"float/moor.Line.Tension":    {1, hang},
		"float/moor.Mooring.Bands":   {-2.0, 2.0},
		"float/moor.Mooring.Winter":  {-1.0, 1.0},
		"float/moor.Mooring.Rest":    {0.0, moor.Load{X: 100, Y: 300}},
		"float/moor.Mooring.Survey":  {levels, storm, 8},
		"float/moor.Mooring.Losses":  {levels, storm, 4},
		"float/moor.Mooring.Lengths": {levels, storm, 4, 1.0, 4.0},
		"float/moor.Ramp.Angle":      {0.5},
		"float/moor.Ramp.Check":      {-0.5, 0.5},
		"float/moor.Ramp.Needed":     {-0.5, 0.5},
		"float/moor.Ramp.Slide":      {-0.5, 0.5},
		"float/moor.Ramp.Reaction":   {800.0, 2.0},
		"float/moor.Cleat.On":        {500.0, 0.1},
		"float/moor.Wake.At":         {60.0, 4.0},
		"float/moor.Snow.Drift":      {10.0},
		"float/moor.Wind.To":         {5.0, 60.0},
		"float/moor.Sea.Push":        {4.0, 0.2, 0.3},
		"float/moor.Fetch.Waves":     {"JONSWAP"},

		"frame.Beam.Envelope":            {[][]frame.Load{{frame.Uniform(0, 6, 100)}, {frame.Point(2, 300)}}, []float64{1, 2}},
		"frame.Beam.Walk":                {[]frame.Load{frame.Point(0, 300), frame.Point(1, 200)}, 0.25, []float64{1, 2}},
		"frame.Beam.MomentInfluence":     {1.5},
		"frame.Beam.ShearInfluence":      {1.5},
		"frame.Beam.DeflectionInfluence": {1.5},
		"frame.Beam.PushInfluence":       {1},
		"frame.Influence.Area":           {0.5, 4.0},
		"frame.Line.ExtremesWithin":      {0.5, 4.0},

		"frame/layout.Ell":          {main, wing},
		"frame/layout.Wedge":        {0.58, 0.46},
		"frame/layout.Corner":       {3.0, 4.0, 5.0},
		"frame/layout.Racked":       {3.0, 4.0, 5.01, 4.99},
		"frame/layout.Frame.Square": {0.0015},
		"frame/layout.Layout.On":    {drawn().Pieces[0].Name},
		"frame/layout.Layout.Under": {layout.Point{X: 0.5, Y: 1}},
		"frame/layout.Layout.Lift":  {0, 1900.0},
		"frame/layout.Layout.Area":  {0},

		"frame/rack.Frame.Lay":        {rack.Board{From: [2]float64{1, 0}, To: [2]float64{1, 2}, EA: 1e7, EI: 1e3}, 0.1, 1.5e6, []int{0, 2}},
		"frame/rack.Solution.Racking": {[4]int{0, 1, 2, 3}},

		"frame/plan.Demo":        {plan.Demos()[0]},
		"frame/plan.Read":        {"demo.json", &again{text: text}},
		"frame/plan.Plan.Vary":   {"frame.length", "25 ft"},
		"frame/plan.Plausible":   {plan.Explain()[0].Path},
		"frame/dock.Read":        {"demo.json", &again{text: text}},
		"frame/sheet.WriteFiles": {folder, []sheet.File(nil)},

		"float/moor.Usual":     {"ramp width"},
		"ice/action.Adhesion":  {"wood", 0.2, 0.3},
		"ice/action.ShortWall": {30.0},

		"ice.Cover.Slush":             {900.0},
		"ice.Pad.Shovelled":           {ice.Plate{Thickness: 0.3, E: 1e9, Nu: 0.33}, 1.0, 1.0},
		"ice.Plate.Breakthrough":      {ice.Patch{Force: 6000, A: 0.5}, 4e5, 6},
		"ice.Table.Thickness":         {3000.0},
		"ice/season.Fit":              {context.Background(), lake, season.Default(), past(), seen()},
		"ice/season.Model.Odds":       {context.Background(), winter(), years(7), season.Question{Need: 0.2}},
		"ice/season.Model.Calendar":   {context.Background(), winter(), years(7), season.Question{Need: 0.2}, season.Tasks(0.1, 0.3)},
		"ice/season.Model.Correct":    {winter(), []season.Hole{{Date: winter()[50].Date, Clear: 0.12, White: 0.02}}},
		"ice/season.Model.Continue":   {start(), winter()[40:]},
		"ice/season.ReadCSV":          {"invented.csv", &again{text: record}},
		"ice/season.FromDates":        {autumns(), 2027},
		"frame/dock.Dock.WithWinters": {"invented.csv", &again{text: record}},

		"lumber.Board.Under":       {900.0, 0.4, 2, false, 8e9},
		"lumber.BoardFeet":         {"2x8", 3.0},
		"lumber.Density":           {0.5, 0.15},
		"lumber.Gap":               {0.14, 0.19, 0.005, 0.12},
		"lumber.Shrinkage":         {0.15},
		"lumber.Tree.Shrunk":       {0.15},
		"lumber.Member.CheckJoint": {0.14, 0.5, 900.0},
		"lumber.EffectiveLength":   {"", 3.0, 0.18},
		"lumber.GreenSize":         {"2x8"},
		"lumber.JoistLines":        {4.8, 0.4, 0.038},
		"lumber.Lookup":            {"Southern Pine", "No.2", size},
		"lumber.PoreFull":          {0.5},
		"lumber.Size":              {"2x8"},
		"lumber.Weakest":           {"No.2", size, []string{"Southern Pine"}},
		"lumber.Member.Span":       {0.4, 480.0, 1900.0},
		"lumber.Member.SpanWithin": {360.0, 0.4, 480.0, 1900.0},
		"lumber.Member.BeamSpan":   {3.0, 0.5, 480.0, 1900.0},
		"lumber.Cut":               {context.Background(), []lumber.Want{{Section: "2x8", Length: 1.2, Count: 5}}, []lumber.Stock{{Section: "2x8", Length: 3.6, Price: 10}}, lumber.Saw{Kerf: 0.003}},

		"lumber/fasten.GroupAction":         {3, 0.0127, 0.05, 0.01, 0.01, false},
		"lumber/fasten.Lookup":              {"1/2 x 7 bolt"},
		"lumber/fasten.PullThrough":         {0.006, 0.025, 0.5},
		"lumber/fasten.Slip":                {500.0, []fasten.Joint{joint()}},
		"lumber/fasten.Fastener.Withdrawal": {0.5},
		"lumber/fasten.Fastener.Combined":   {500.0, 300.0, 0.7},
		"lumber/fasten.Connector.Check":     {fasten.Forces{Down: 900, Up: 100, Along: 50}},
		"lumber/fasten.Piece.Bearing":       {0.0127},

		"lumber/measure.Assumption.UnmarshalJSON": {[]byte(`{"name":"moisture","text":"wet","known":"measured"}`)},
		"lumber/measure.Factor.UnmarshalJSON":     {[]byte(`{"symbol":"CD","name":"duration","value":1.15}`)},
		"lumber/measure.Kind.UnmarshalText":       {[]byte("length")},
		"lumber/measure.Knowledge.UnmarshalText":  {[]byte("measured")},
		"lumber/measure.Status.UnmarshalText":     {[]byte("read")},
		"lumber/measure.System.UnmarshalText":     {[]byte("si")},
		"lumber/measure.Verdict.UnmarshalText":    {[]byte("holds")},
		"lumber/measure.Kind.Parse":               {"3 m"},
		"lumber/measure.FeetInches":               {3.66, 16},
	}
})
