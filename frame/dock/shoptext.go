package dock

import (
	"bufio"
	"fmt"
	"io"
	"strings"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// WriteText writes the lists for a person, in 80 columns: what is cut from which
// board, what is bought, what goes on the wood, and what is carried. The error is
// the writer's.
func (s *Shop) WriteText(w io.Writer) error {
	p := &page{w: bufio.NewWriter(w)}
	s.text(p)
	return p.w.Flush()
}

func (s *Shop) text(p *page) {
	s.cutText(p)
	s.billText(p)
	s.hardwareText(p)
	s.finishText(p)
	s.carryText(p)
}

func (s *Shop) hardwareText(p *page) {
	p.heading("HARDWARE, SPARES COUNTED")
	for _, r := range s.Joints.Rows {
		p.hang("", fmt.Sprintf("%s: %d %s", r.Place, r.Count, r.Fastener))
	}
	for _, i := range s.Joints.Items {
		p.hang("", fmt.Sprintf("to buy: %d %s", i.Count, i.What))
	}
	if s.Joints.Err != nil {
		p.wrap("", "Not whole: "+strings.Join(strings.Split(measure.RestateError(s.Joints.Err, s.Units).Error(), "\n"), "; "))
	}
}

func (s *Shop) cutText(p *page) {
	c := &s.Cutting
	length := func(x float64) string { return measure.Length.Format(x, s.Units) }
	p.heading("CUT LIST")
	if c.Err != nil {
		p.wrap("", "No answer: "+measure.RestateError(c.Err, s.Units).Error())
		return
	}
	p.wrap("", fmt.Sprintf("Saw cut %s, %s off each end of a board. Measure each board before you cut it.", length(c.Saw.Kerf), length(c.Saw.Trim)))
	for i := 0; i < len(c.Boards); {
		n := 1
		for i+n < len(c.Boards) && alike(c.Boards[i], c.Boards[i+n]) {
			n++
		}
		p.hang("", fmt.Sprintf("%d x %s", n, sawn(c.Boards[i], s.Units)))
		i += n
	}
	for _, u := range c.Uncut {
		p.hang("", fmt.Sprintf("WITHOUT A BOARD: %d of %s: %s, of %s", u.Count, u.Name, length(u.Length), u.Section))
	}
	for _, n := range c.Notes {
		p.wrap("", n)
	}
}

// sawn says what is cut from a board: "2x8, 12 ft, bought: joist: 9 ft 6 in; rest: 2 ft".
func sawn(b lumber.Sawn, units measure.System) string {
	var parts []string
	for i := 0; i < len(b.Pieces); {
		n := 1
		for i+n < len(b.Pieces) && b.Pieces[i+n].Name == b.Pieces[i].Name && b.Pieces[i+n].Length == b.Pieces[i].Length {
			n++
		}
		text := b.Pieces[i].Name + ": " + measure.Length.Format(b.Pieces[i].Length, units)
		if n > 1 {
			text = fmt.Sprintf("%d of %s", n, text)
		}
		parts = append(parts, text)
		i += n
	}
	rest := 0.0
	for _, o := range b.Offcuts {
		rest += o.Length
	}
	name := b.Name
	if i := strings.LastIndex(name, " "); i > 0 { // without the board's number
		name = name[:i]
	}
	return name + ": " + strings.Join(parts, "; ") + "; rest: " + measure.Length.Format(rest, units)
}

func (s *Shop) billText(p *page) {
	b, c := &s.Bill, &s.Cutting
	p.heading("PURCHASE LIST")
	p.line(fmt.Sprintf("%-40s %5s %5s %5s %9s %10s", "", "need", "have", "buy", "price", "cost"))
	for _, r := range b.Rows {
		name := r.Item
		if r.Lot > 1 {
			name += fmt.Sprintf(", in lots of %d", r.Lot)
		}
		for len([]rune(name)) > 40 {
			cut := strings.LastIndex(string([]rune(name)[:41]), " ")
			if cut <= 0 {
				break
			}
			p.line(name[:cut])
			name = "  " + strings.TrimSpace(name[cut:])
		}
		if r := []rune(name); len(r) > 40 {
			name = string(r[:39]) + "…"
		}
		if r.Err != nil {
			p.line(name)
			p.wrap("  ", "no answer: "+measure.RestateError(r.Err, s.Units).Error())
			continue
		}
		p.line(fmt.Sprintf("%-40s %5d %5d %5d %9s %10s", name, r.Need, r.Have, r.Buy, amount(r.Price), amount(r.Cost)))
	}
	total := "Total, " + b.Currency
	if b.Currency == "" {
		total += "in " + currencyName("")
	}
	for _, l := range []struct {
		name string
		x    float64
	}{{"Goods", b.Goods}, {"Delivery", b.Delivery}, {"Tax on both", b.Tax}, {total, b.Total}} {
		p.line(fmt.Sprintf("%-68s %10s", l.name, amount(l.x)))
	}
	if b.Err != nil {
		p.wrap("", "No total: "+measure.RestateError(b.Err, s.Units).Error())
	}
	if c.Err == nil {
		p.wrap("", "Lumber by the board: "+proof(c, b.Currency, s.Units)+".")
	}
}

// amount prints an amount, a dash where it is not known.
func amount(x float64) string {
	if s := cents(x); s != "" {
		return s
	}
	return "-"
}

func (s *Shop) finishText(p *page) {
	p.heading("ON THE WOOD")
	for _, f := range s.Finish {
		switch {
		case f.Err != nil:
			p.hang("", fmt.Sprintf("%s, on %s: no answer: %v", f.Name, f.On, measure.RestateError(f.Err, s.Units)))
		default:
			text := fmt.Sprintf("%s, on %s: %s, %d coats, %s", f.Name, f.On, measure.Area.Format(f.Area, s.Units), f.Coats, measure.Volume.Format(f.Volume, s.Units))
			if f.Spread != nil {
				text += " [" + f.Spread.String() + "]"
			}
			p.hang("", text)
		}
		for _, g := range f.Gate {
			p.hang("  ", g)
		}
	}
}

func (s *Shop) carryText(p *page) {
	p.heading("TO THE LAKE")
	p.wrap("", measure.Restate("People by the weight of one: 23 kg (51 lb) each", s.Units)+" ["+srcLift.String()+
		"]. Crew by the pull or the brake on the slope: "+measure.Force.Format(pullOne, s.Units)+" each ["+srcPull.String()+"].")
	p.line(fmt.Sprintf("%-24s %5s %9s %6s %5s %9s %9s %4s", "", "count", "one", "people", "trips", "load", "pull", "crew"))
	for _, h := range s.Carry {
		name := h.Piece
		if r := []rune(name); len(r) > 24 {
			name = string(r[:23]) + "…"
		}
		p.line(fmt.Sprintf("%-24s %5s %9s %6s %5s %9s %9s %4s", name, dash(h.Count), s.print(measure.Mass, given(h.Each)), dash(h.People), dash(h.Trips),
			s.print(measure.Mass, given(h.Load)), s.print(measure.Force, given(h.Pull)), dash(h.Crew)))
		if h.Err != nil {
			p.wrap("  ", "no answer: "+measure.RestateError(h.Err, s.Units).Error())
		}
	}
}

func (s *Shop) print(k measure.Kind, x float64) string {
	if decimals(x, 0) == "" {
		return "-"
	}
	return k.Format(x, s.Units)
}

func dash(n int) string {
	if n == 0 {
		return "-"
	}
	return some(n)
}
