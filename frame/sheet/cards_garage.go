package sheet

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"example.org/floewright/frame/dock"
	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// cut is the cut list, board by board.
func (c *cards) cut() Card {
	out := Card{Name: "cut-list", Title: "Cut list"}
	if c.report.Shop == nil {
		out.Blocks = []Block{Paragraph("There is no cutting plan: the report has no shop.")}
		return out
	}
	k := &c.report.Shop.Cutting
	if k.Err != nil {
		out.Blocks = []Block{c.missing("The cutting plan", k.Err)}
		c.wants(&out, k)
		return out
	}
	out.Blocks = []Block{
		Paragraph(fmt.Sprintf("Saw cut %s; square the end of each board first, %s off. Tick a board when it is cut, and its ends when they are coated.", c.length(k.Saw.Kerf), c.length(k.Saw.Trim))),
		c.picture("cutting"),
	}
	t := Table{Caption: "Board by board", Head: []string{"board", "cut from it, in this order", "left", "ends coated, tally"}, Tick: true}
	for i := 0; i < len(k.Boards); {
		b := k.Boards[i]
		n := 1
		for i+n < len(k.Boards) && cutAlike(k.Boards[i+n], b) && k.Boards[i+n].Bought == b.Bought {
			n++
		}
		i += n
		if len(b.Pieces) == 0 {
			continue
		}
		name := fmt.Sprintf("%s, %s", b.Section, c.length(b.Length))
		if n > 1 {
			name = fmt.Sprintf("%d of %s", n, name)
		}
		t.Rows = append(t.Rows, Row{Cells: []string{name, c.pieces(b), c.length(offcuts(b)), WriteIn}})
	}
	out.Blocks = append(out.Blocks, t)
	if len(k.Uncut) > 0 {
		var items []string
		for _, w := range k.Uncut {
			items = append(items, fmt.Sprintf("%d of %s: %s, of %s", w.Count, w.Name, c.length(w.Length), w.Section))
		}
		out.Blocks = append(out.Blocks, Stop("These find no board: "+strings.Join(items, "; ")+"."))
	}
	return out
}

// pieces lists what is cut from a board, equal ones together.
func (c *cards) pieces(b lumber.Sawn) string {
	var out []string
	for i := 0; i < len(b.Pieces); {
		p := b.Pieces[i]
		n := 1
		for i+n < len(b.Pieces) && b.Pieces[i+n].Name == p.Name && math.Abs(b.Pieces[i+n].Length-p.Length) < 1e-6 {
			n++
		}
		i += n
		s := p.Name + ": " + c.length(p.Length)
		if n > 1 {
			s = strconv.Itoa(n) + " of " + s
		}
		out = append(out, s)
	}
	return strings.Join(out, "; ") // names hold commas
}

// wants lists the pieces without boards.
func (c *cards) wants(out *Card, k *dock.Cutting) {
	t := Table{Caption: "Pieces to cut", Head: []string{"piece", "size", "length", "number"}, Tick: true}
	if len(k.Wants) == 0 {
		for range 8 {
			t.Rows = append(t.Rows, Row{Cells: []string{WriteIn, WriteIn, WriteIn, WriteIn}})
		}
	}
	for _, w := range k.Wants {
		t.Rows = append(t.Rows, Row{Cells: []string{w.Name, w.Section, c.length(w.Length), strconv.Itoa(w.Count)}})
	}
	out.Blocks = append(out.Blocks, t)
}

// money prints an amount, a line to write on where it is not known.
func money(x float64) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return WriteIn
	}
	return strconv.FormatFloat(x, 'f', 2, 64)
}

// shopping is the purchase list, and what goes on the wood.
func (c *cards) shopping() Card {
	out := Card{Name: "shopping", Title: "Purchase list"}
	if c.report.Shop == nil {
		out.Blocks = []Block{Paragraph("There is no purchase list: the report has no shop.")}
		return out
	}
	b := &c.report.Shop.Bill
	cur := b.Currency
	if cur == "" {
		cur = "currency not named"
	}
	t := Table{Caption: "Prices in " + cur, Head: []string{"item", "need", "have", "buy", "each", "cost"}, Tick: true}
	note := map[string]string{}
	for _, p := range b.Rows {
		r := Row{Cells: []string{p.Item, strconv.Itoa(p.Need), strconv.Itoa(p.Have), strconv.Itoa(p.Buy), money(p.Price), money(p.Cost)}}
		if p.Err != nil {
			r.Cells = []string{p.Item, WriteIn, WriteIn, WriteIn, money(p.Price), WriteIn}
			text := c.why(p.Err)
			if note[text] == "" {
				note[text] = strconv.Itoa(len(note) + 1)
				t.Notes = append(t.Notes, Note{note[text], text + "."})
			}
			r.Notes = []string{note[text]}
		}
		t.Rows = append(t.Rows, r)
	}
	sum := Table{Caption: "Sum", Head: []string{"part", "amount"}, Rows: []Row{
		{Cells: []string{"goods", money(b.Goods)}}, {Cells: []string{"delivery", money(b.Delivery)}}, {Cells: []string{"tax on both", money(b.Tax)}}, {Cells: []string{"total", money(b.Total)}},
	}}
	out.Blocks = []Block{t, sum}
	if b.Err != nil {
		out.Blocks = append(out.Blocks, Paragraph("No total: "+c.why(b.Err)+"."))
	}
	return out
}

// finish is what goes on the wood, and when it may.
func (c *cards) finish() Card {
	out := Card{Name: "finish", Title: "On the wood"}
	if c.report.Shop == nil {
		return out
	}
	for _, f := range c.report.Shop.Finish {
		out.Blocks = append(out.Blocks, Heading(f.Name+", on "+f.On))
		if f.Err != nil {
			out.Blocks = append(out.Blocks, c.missing("How much", f.Err))
		} else {
			text := fmt.Sprintf("%s, %d coats: %s", measure.Area.Format(f.Area, c.units), f.Coats, measure.Volume.Format(f.Volume, c.units))
			if f.Cans > 0 {
				text += fmt.Sprintf(", %d cans to buy", f.Cans)
			}
			if f.Spread != nil {
				text += " (" + f.Spread.String() + ")"
			}
			out.Blocks = append(out.Blocks, Paragraph(text+"."))
		}
		out.Blocks = append(out.Blocks, List{Items: f.Gate, Tick: true})
	}
	return out
}

// hardware is the schedule of fasteners, brackets and ties.
func (c *cards) hardware() Card {
	out := Card{Name: "hardware", Title: "Hardware schedule"}
	if c.report.Shop == nil {
		return Card{}
	}
	rows, items, err := c.report.Shop.Joints.Rows, c.report.Shop.Joints.Items, c.report.Shop.Joints.Err
	t := Table{Caption: "Where, and how many there", Head: []string{"place", "fastener", "number", "bore"}, Tick: true}
	for _, r := range rows {
		var bores []string
		for _, d := range r.Drills {
			bores = append(bores, fmt.Sprintf("%s %s", d.What, c.length(d.Size)))
		}
		bore := strings.Join(bores, ", ")
		if bore == "" {
			bore = "none"
		}
		t.Rows = append(t.Rows, Row{Cells: []string{r.Place, r.Fastener, strconv.Itoa(r.Count), bore}})
	}
	if len(t.Rows) > 0 {
		out.Blocks = append(out.Blocks, t)
	}
	if len(items) > 0 {
		buy := Table{Caption: "To buy, spares counted", Head: []string{"what", "number"}, Tick: true}
		for _, i := range items {
			buy.Rows = append(buy.Rows, Row{Cells: []string{i.What, strconv.Itoa(i.Count)}})
		}
		out.Blocks = append(out.Blocks, buy)
	}
	if len(rows)+len(items) == 0 {
		blank := Table{Head: []string{"place", "fastener", "number", "bore"}, Tick: true}
		for range 8 {
			blank.Rows = append(blank.Rows, Row{Cells: []string{WriteIn, WriteIn, WriteIn, WriteIn}})
		}
		out.Blocks = append(out.Blocks, blank)
	}
	if err != nil {
		out.Blocks = append(out.Blocks, Stop("The list is not whole: "+strings.Join(strings.Split(c.why(err), "\n"), "; ")+"."))
	}
	return out
}

// carry is what goes down to the lake.
func (c *cards) carry() Card {
	out := Card{Name: "carry", Title: "Carrying it down"}
	if c.report.Shop == nil {
		out.Blocks = []Block{Paragraph("There is no list: the report has no shop.")}
		return out
	}
	t := Table{Head: []string{"piece", "number", "each", "people", "trips", "holds back", "trips made"}, Tick: true}
	var why []string
	for _, h := range c.report.Shop.Carry {
		r := Row{Cells: []string{h.Piece, strconv.Itoa(h.Count), WriteIn, WriteIn, WriteIn, "", WriteIn}}
		if h.Each > 0 {
			r.Cells[2] = c.mass(h.Each)
		}
		if h.People > 0 {
			r.Cells[3] = strconv.Itoa(h.People)
		}
		if h.Trips > 0 {
			r.Cells[4] = strconv.Itoa(h.Trips)
		}
		if h.Brake > 0 {
			r.Cells[5] = fmt.Sprintf("%s, %s", c.force(h.Brake), people(h.Crew))
		}
		if h.Err != nil {
			why = append(why, h.Piece+": "+c.why(h.Err))
		}
		t.Rows = append(t.Rows, r)
	}
	var sources []string
	for _, s := range c.report.Shop.CarrySources {
		sources = append(sources, s.String())
	}
	out.Blocks = []Block{t, Paragraph("People and pulls by: " + strings.Join(sources, "; ") + ". What holds back is the pull of a loaded sled that slides as on ice.")}
	if len(why) > 0 {
		out.Blocks = append(out.Blocks, Heading("Not known, or too heavy"), List{Items: why})
	}
	out.Blocks = append(out.Blocks, Stop("No pile on the ice on the way, and nobody below a sled on the slope."))
	return out
}
