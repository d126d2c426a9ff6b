package hostile

import (
	"context"
	"sync"
	"time"

	"example.org/floewright/frame/dock"
	"example.org/floewright/frame/layout"
	"example.org/floewright/frame/plan"
	"example.org/floewright/frame/sheet"
	"example.org/floewright/ice"
	"example.org/floewright/lumber/fasten"
	"example.org/floewright/lumber/measure"
)

// received returns receivers for single methods, by name, where the one that is made for
// the type is refused. All are invented.
var received = sync.OnceValue(func() map[string]any {
	known := must(must(plan.Read("demo.json", demo(0))).Vary("frame.decking.screw", "#10 x 3-1/2 screw"))
	known = must(known.Vary("frame.decking.screws", "2"))
	d := must(dock.Build(known))
	envelope := must(d.Envelope(context.Background()))
	report := must(d.Report(context.Background(), measure.SI))
	panel := panel()
	panel.Boards = nil
	firm := must(panel.Solve())
	nail := must(fasten.Lookup("16d common nail"))
	day := time.Date(2027, time.January, 15, 0, 0, 0, 0, time.UTC)
	rising := []float64{0, 0.2, 0.4}
	return map[string]any{
		"frame/dock.Dock.Hardware":    *d,
		"frame/dock.Envelope.Diagram": *envelope,
		"frame/dock.Report.Envelope":  *report,
		"frame/layout.Layout.Lift":    *must(layout.New(lifted())),
		"frame/plan.Start.JSON":       plan.Start{Length: 7.3, Width: 3, Drum: "drum", Girth: 1.82, Long: 0.9, Mass: 10},
		"frame/plan.Start.Remark":     plan.Start{Length: 7.3, Width: 3, Drum: "drum", Girth: 1.82, Long: 0.9, Mass: 10},
		"frame/rack.Line.Moved":       firm.Lines[0],
		"frame/sheet.Cutting.Draw": sheet.Cutting{Boards: []sheet.Board{
			{Size: "2x8", Length: 3.6, Kerf: 0.003, Trim: 0.01, Count: 2, Pieces: []sheet.Piece{{Name: "joist", Length: 2.4}, {Name: "block", Length: 0.5}}},
			{Size: "2x10", Length: 4.8, Kerf: 0.003, Pieces: []sheet.Piece{{Name: "rim", Length: 4.7}}},
		}},
		"frame/sheet.Document.Files": page(day),
		"frame/sheet.Document.HTML":  page(day),
		"frame/sheet.Heeled.Draw": sheet.Heeled{
			Width: 3, Depth: 0.184, Deck: 0.038, Rim: 0.05, Broad: 0.08, Heel: 0.1, Height: 0.2, People: []float64{1.3, 0.9}, Load: "2 people",
			Floats: []sheet.Endwise{{Y: -1, Z: -0.2, Broad: 0.58, High: 0.58, Round: true}, {Y: 1, Z: -0.2, Broad: 0.58, High: 0.58, Round: true}},
		},
		"frame/sheet.Moments.Draw": sheet.Moments{
			Member: "rim", When: "a drum lost", From: "near side", Length: 0.4, Supports: []float64{0.1, 0.3}, X: rising, Moment: []float64{0, 300, -200}, Limit: 900, LimitHog: 800,
			Points: []sheet.PointLoad{{X: 0.2, Force: 800}}, Lines: []sheet.LineLoad{{X0: 0, X1: 0.4, Load: 50}},
		},
		"frame/sheet.Righting.Draw": sheet.Righting{
			Heel: rising, Rights: []float64{0, 4000, 3000}, Heels: []float64{900, 880, 850}, Rest: 0.05, DeckWet: 0.3, Load: "people at one edge",
		},
		"ice.Pad.Shovelled":                 ice.Pad{A: 4, B: 6, Snow: 60, Bank: 1},
		"lumber/fasten.Fastener.Combined":   nail,
		"lumber/fasten.Fastener.Withdrawal": nail,
		"lumber/fasten.Connector.Check": fasten.Connector{
			Name: "hanger", Printed: fasten.Forces{Down: 4000, Up: 2200, Lateral: 900, Along: 900, Reversal: 900}, For: fasten.Forces{Down: 1, Up: 1.6}, Basis: 0.5,
			Nail: must(fasten.Lookup("10d common nail")), HeaderNails: 10, JoistNails: 4, Steel: 0.0015,
		},
	}
})

// demo returns the text of an embedded plan.
func demo(i int) *again {
	r := must(plan.Demo(plan.Demos()[i]))
	text := make([]byte, r.Len())
	must(r.Read(text))
	return &again{text: string(text)}
}

// lifted is a bay with a drum under the boards, that stands up between two joists.
func lifted() layout.Drawing {
	d := drawn()
	d.Drums[0].Bears = layout.UnderBoards
	d.Drums[0].Diameter = 0.44
	d.Drums[0].DropIn, d.Drums[0].Tied = true, true
	return d
}

func page(day time.Time) sheet.Document {
	return sheet.Document{
		Title: "an invented dock", Fingerprint: "5f1c-09ab", Date: day, Method: "by hand", NotChecked: []string{"all of it"},
		Cards: []sheet.Card{{Name: "cuts", Title: "Cuts", Blocks: []sheet.Block{
			sheet.Heading("By piece"), sheet.Paragraph("Measure twice."), sheet.Stop("on wet ice."),
			sheet.List{Ordered: true, From: 2, Tick: true, Items: []string{"a rim", "a joist"}},
			sheet.Table{Caption: "cuts", Head: []string{"piece", "length"}, Rows: []sheet.Row{{Cells: []string{"rim", "4.8 m"}, Notes: []string{"1"}}}, Notes: []sheet.Note{{Code: "1", Text: "measured"}}},
			sheet.Blanks{{Label: "diagonal", Unit: "m"}},
		}}},
	}
}
