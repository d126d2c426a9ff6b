package sheet_test

import (
	"math"
	"time"

	"example.org/floewright/frame/sheet"
	"example.org/floewright/lumber/measure"
)

const (
	in = measure.Inch
	ft = measure.Foot
)

// All of this is invented: a swim platform of 10 ft by 24 ft on eighteen drums.

func demoPlan(u measure.System) sheet.Plan {
	p := sheet.Plan{Units: u, Length: 24 * ft, Width: 10 * ft, Diagonal: 26 * ft, Ends: [2]string{"shore", "lake"}}
	thick := 1.5 * in
	for _, x := range []float64{0, 20.5, 44, 64.25, 87.75, 108.5, 131.75, 154.75, 178, 198.75, 222.25, 242.5, 266, 286.5} {
		p.Along = append(p.Along, x*in)
		p.Members = append(p.Members, sheet.Rectangle{X0: x * in, Y0: thick, X1: x*in + thick, Y1: p.Width - thick})
	}
	p.Members = append(p.Members, sheet.Rectangle{X1: p.Length, Y1: thick}, sheet.Rectangle{X1: p.Length, Y0: p.Width - thick, Y1: p.Width})
	p.Across = []float64{21.625 * in, 60 * in, 98.375 * in}
	n := 0
	for _, bay := range []int{0, 2, 4, 8, 10, 12} {
		mid := (p.Along[bay] + thick + p.Along[bay+1]) / 2
		for _, y := range p.Across {
			n++
			p.Floats = append(p.Floats, sheet.Afloat{Name: itoa(n), X: mid, Y: y, Long: 23.24 * in, Broad: 36.5 * in})
		}
	}
	p.Things = []sheet.Thing{{Name: "swim ladder", X: 23.5 * ft, Y: 5 * ft}, {Name: "bench", X: 2 * ft, Y: 5 * ft}}
	return p
}

func itoa(n int) string {
	if n < 10 {
		return string(rune('0' + n))
	}
	return itoa(n/10) + itoa(n%10)
}

func demoSection(u measure.System) sheet.Section {
	d := 23.24 * in
	clear := 19 * in
	return sheet.Section{
		Units: u, Clear: clear, JoistThick: 1.5 * in, JoistDepth: 7.25 * in, Deck: 1.5 * in,
		Broad: d, High: d, Round: true, Middle: -math.Sqrt(d*d-clear*clear) / 2, Name: "plastic drum", Bears: "bears on the joists' lower edges",
		Water: []sheet.Waterline{{Name: "nobody aboard", Height: -7.5 * in}, {Name: "everyone at one edge", Height: -2 * in}},
	}
}

func demoHeeled(u measure.System) sheet.Heeled {
	h := sheet.Heeled{
		Units: u, Width: 10 * ft, Depth: 7.25 * in, Deck: 1.5 * in, Heel: 6.4 * math.Pi / 180, Height: 7 * in, Load: "5 people at one edge, 660 lb",
		People: []float64{1.38, 1.15, 0.9, 0.65, 0.3},
	}
	for _, y := range []float64{-38.4 * in, 0, 38.4 * in} {
		h.Floats = append(h.Floats, sheet.Endwise{Y: y, Z: -6.7 * in, Broad: 36.5 * in, High: 23.24 * in})
	}
	return h
}

func demoMoments(u measure.System) sheet.Moments {
	m := sheet.Moments{
		Units: u, Member: "rim, one drum lost", Length: 24 * ft, Supports: []float64{1.1 * ft, 8 * ft, 16 * ft, 22.9 * ft}, Limit: 1500,
		Points: []sheet.PointLoad{{X: 6 * ft, Force: 185 * measure.PoundForce}, {X: 11.5 * ft, Force: 150 * measure.PoundForce}, {X: 12.2 * ft, Force: 185 * measure.PoundForce}, {X: 12.6 * ft, Force: 70 * measure.PoundForce}},
		Lines:  []sheet.LineLoad{{X0: 0, X1: 24 * ft, Load: 12 * measure.PLF}},
	}
	for i := 0; i <= 240; i++ {
		x := float64(i) / 240
		m.X = append(m.X, x*m.Length)
		m.Moment = append(m.Moment, 900*math.Sin(5*math.Pi*x)*math.Sin(math.Pi*x)-120*math.Sin(math.Pi*x)) // no beam has it
	}
	return m
}

func demoCutting(u measure.System) sheet.Cutting {
	piece := func(name string, l float64) sheet.Piece { return sheet.Piece{Name: name, Length: l * in} }
	return sheet.Cutting{Units: u, Boards: []sheet.Board{
		{Size: "2x8", Length: 24*ft + 0.75*in, Count: 2, Kerf: 0.125 * in, Pieces: []sheet.Piece{piece("rim", 288)}},
		{Size: "2x8", Length: 10*ft + 0.5*in, Count: 14, Kerf: 0.125 * in, Pieces: []sheet.Piece{piece("joist", 117)}},
		{Size: "2x8", Length: 12 * ft, Kerf: 0.125 * in, Pieces: []sheet.Piece{
			piece("blocking", 19), piece("blocking", 19), piece("blocking", 22), piece("cleat", 6), piece("cleat", 6), piece("cleat", 6), piece("blocking", 21.75), piece("wedge", 2), piece("wedge", 2), piece("wedge", 2),
		}},
		{Size: "2x6", Length: 16 * ft, Count: 3, Kerf: 0.125 * in, Pieces: []sheet.Piece{piece("deck board, left", 95.5), piece("deck board, right", 72.25)}},
	}}
}

func demoRighting(u measure.System) sheet.Righting {
	r := sheet.Righting{Units: u, Rest: 0.105, DeckWet: 0.21, Load: "5 people at one edge"}
	for i := 0; i <= 60; i++ {
		a := float64(i) / 60 * 0.6
		r.Heel = append(r.Heel, a)
		r.Rights = append(r.Rights, 40000*a*math.Exp(-a*a/0.12)) // no dock has it
		r.Heels = append(r.Heels, 3980*math.Cos(a))
	}
	return r
}

func demoWinter(u measure.System) sheet.Winter {
	w := sheet.Winter{Units: u, First: time.Date(2026, time.November, 15, 0, 0, 0, 0, time.UTC), Band: "what 9 and what 1 of 10 winters had"}
	one := sheet.Asked{Name: "one person on foot, rule named in the text", Thick: 4 * in}
	crew := sheet.Asked{Name: "crew and stack", Thick: 12 * in}
	for i := range 160 {
		t := float64(i) / 159
		grow := 20 * in * math.Pow(math.Max(0, math.Sin(math.Pi*math.Pow(t, 0.8))), 0.9)
		w.Thin = append(w.Thin, 0.6*grow)
		w.Middle = append(w.Middle, grow)
		w.Thick = append(w.Thick, 1.35*grow)
		odds := func(need float64) float64 { return 1 / (1 + math.Exp(-(grow-need)/0.06)) * math.Min(1, grow/need*1.2) }
		one.Odds = append(one.Odds, odds(one.Thick))
		crew.Odds = append(crew.Odds, odds(crew.Thick))
	}
	w.Asked = []sheet.Asked{one, crew}
	w.Holes = []sheet.Drilled{{When: w.First.AddDate(0, 0, 30), Thick: 7 * in}, {When: w.First.AddDate(0, 0, 83), Thick: 20.25 * in}}
	w.Marks = []sheet.Day{{When: w.First.AddDate(0, 0, 84), Name: "assembly"}, {When: w.First.AddDate(0, 0, 145), Name: "break-up in half of the winters"}}
	return w
}

func demoLines(u measure.System) sheet.Lines {
	return sheet.Lines{
		Units: u, Length: 24 * ft, Deck: 16 * in, Draft: 9 * in, Bed: 9 * ft,
		Levels: []sheet.Level{{Name: "low water", Rise: -18 * in}, {Name: "today", Rise: 0}, {Name: "high water", Rise: 12 * in}},
		Ties: []sheet.Tie{
			{Name: "old pine", X: 0, Y: 0, Over: 14 * in, FarX: -30 * ft, FarY: -12 * ft, FarZ: 3 * ft, Spare: 6 * in},
			{Name: "anchor, lake end", X: 24 * ft, Y: 10 * ft, Over: 14 * in, FarX: 45 * ft, FarY: 20 * ft, FarZ: -9 * ft, Spare: 6 * in},
		},
	}
}

// A drawer is any picture's data.
type drawer interface{ Draw() (sheet.Picture, error) }

// demos returns every picture's data in the order of the pages.
func demos(u measure.System) []drawer {
	return []drawer{demoPlan(u), demoSection(u), demoHeeled(u), demoMoments(u), demoCutting(u), demoRighting(u), demoWinter(u), demoLines(u)}
}
