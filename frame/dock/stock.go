package dock

import (
	"context"
	"fmt"
	"math"
	"slices"

	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

var (
	srcBoards = &measure.Source{Title: "Every piece is cut from a board", Status: measure.Exact}
	srcBudget = &measure.Source{Title: "the plan's own budget", Status: measure.OwnChoice}
	srcBoxes  = &measure.Source{Title: "the dock is reckoned with the weight of what is bought for it", Status: measure.Exact}
)

// stock checks that the longest piece of each size can be cut from a board, that
// the boards for sale and those listed suffice for all pieces, what the hardware on
// the list weighs and, where the plan has a budget, what everything costs.
func (d *Dock) stock() []measure.Check {
	out := d.longest()
	b := d.plan.Shop.Budget
	budget := plan.Has(b) || b.At.Line > 0
	cut := d.Cutting
	if d.trial != nil && d.trial.path != "" && !budget {
		cut = d.leftover // the price does not matter
	}
	c, err := cut(d.trial.context())
	if err != nil { // the context ended, and with it the report
		c = &Cutting{Err: err}
	}
	out = append(out, d.left(c, c.Err, "Pieces without a board, in hand or for sale", d.cutNotes(c)))
	listed, err := d.listed(c)
	out = append(out, d.left(listed, err, "Pieces without a board, of those in hand and listed to buy", nil))
	out = append(out, d.boxes()...)
	if budget {
		out = append(out, d.budget(c))
	}
	return out
}

// leftover finds which pieces are left without a board, as [Dock.Cutting] does,
// without looking for the cheapest boards for the rest: what a board for sale holds
// need not compete for those in hand.
func (d *Dock) leftover(ctx context.Context) (*Cutting, error) {
	c := &Cutting{Saw: d.saw(), Err: d.cutRests().err()}
	if c.Err == nil {
		c.Wants, c.Notes, c.Err = d.wants()
	}
	if c.Err != nil || len(d.plan.Stock) == 0 {
		return d.cutting(ctx)
	}
	stock, _ := d.yardStock(c, false)
	var sale, hand []lumber.Stock
	var free []float64
	places := c.stock
	c.stock = nil
	for i, s := range stock {
		if s.InHand > 0 {
			hand, free, c.stock = append(hand, s), append(free, 0), append(c.stock, places[i])
			continue
		}
		s.InHand, s.Price = 1, 0
		sale = append(sale, s)
	}
	all := c.Wants
	c.Wants = nil
	for _, w := range all {
		if !fits(ctx, w, sale, c.Saw) {
			c.Wants = append(c.Wants, w)
		}
	}
	err := c.cut(ctx, hand, free)
	c.Wants = all
	return c, err
}

func (d *Dock) longest() []measure.Check {
	var out []measure.Check
	for _, p := range []struct {
		name   string
		w      wood
		length float64
		more   rests
	}{
		{"joist", d.joist, d.clear, rests{on(d.plan.Frame.Joists.Size), on(d.plan.Frame.Rims.Size), on(d.plan.Frame.Rims.Plies)}},
		{"rim", d.rim, d.run(), rests{on(d.plan.Frame.Rims.Size)}},
		{"deck board", d.board, d.run(), rests{on(d.plan.Frame.Decking.Size)}},
	} {
		rs := append(rests{on(d.plan.Frame.Length), on(d.plan.Frame.Width)}, p.more...)
		c := measure.Check{
			Name: "Longest board for a " + p.name, Kind: measure.Length, Value: math.NaN(), Limit: p.length, AtLeast: true, Rule: srcLength,
		}
		for i := range d.plan.Stock {
			b := &d.plan.Stock[i]
			s, err := size(b.Size.Value)
			if err != nil || !same(s, p.w.section) {
				continue
			}
			rs = append(rs, on(b.Length))
			if !(c.Value >= b.Length.Value) {
				c.Value = b.Length.Value
			}
		}
		if c.Err = rs.err(); c.Err == nil && math.IsNaN(c.Value) {
			c.Err = &measure.Error{Field: "stock", Class: measure.ErrUnknown, Want: "a board of this size in the plan's stock"}
		}
		c.Rests = rs.assumptions()
		out = append(out, c)
	}
	return out
}

// left checks that a cutting leaves no piece without a board.
func (d *Dock) left(c *Cutting, err error, name string, notes []string) measure.Check {
	out := measure.Check{
		Name: name, Kind: measure.Length, Value: math.NaN(), Limit: 0, Rule: srcBoards,
		Rests: dedupe(d.cutRests()).assumptions(), Notes: notes, Err: err,
	}
	if err != nil {
		return out
	}
	out.Value = 0
	for _, w := range c.Uncut {
		out.Value += float64(w.Length * float64(w.Count))
		out.Notes = append(out.Notes, fmt.Sprintf("without a board: %d x %s of %s, %s",
			w.Count, w.Name, measure.Length.Format(w.Length, d.system()), w.Section))
		if !slices.ContainsFunc(d.plan.Stock, func(b plan.Board) bool {
			s, err := size(b.Size.Value)
			return err == nil && d.sizeName(s) == w.Section
		}) {
			out.Err = &measure.Error{Field: "stock", Class: measure.ErrUnknown, Want: "boards of the size " + w.Section}
		}
	}
	return out
}

// cutNotes says what a cutting takes, and whether a better one is ruled out.
func (d *Dock) cutNotes(c *Cutting) []string {
	if c.Err != nil {
		return nil
	}
	inHand, bought := 0, 0
	for _, b := range c.Boards {
		if b.Bought {
			bought++
		} else {
			inHand++
		}
	}
	text := fmt.Sprintf("%d boards in hand are cut into, %d are bought; left over %s of %s",
		inHand, bought, measure.Length.Format(c.Offcuts, d.system()), measure.Length.Format(c.Length, d.system()))
	return append([]string{text, proof(c, d.plan.Currency.Value, d.system())}, c.Notes...)
}

// proof says whether a cheaper cutting is ruled out.
func proof(c *Cutting, currency string, units measure.System) string {
	switch {
	case math.IsNaN(c.Cost) && c.Proven:
		return "proven for the sizes with prices; of those without, none buys less length"
	case math.IsNaN(c.Cost):
		return "the search was stopped: another plan may buy less"
	case c.Proven:
		return "proven: no plan by the board leaves fewer pieces uncut or costs less than " + price(c.Cost, currency)
	}
	return fmt.Sprintf("the search was stopped at %s by the board: another plan may save %s at the most",
		price(c.Cost, currency), measure.Percent.Format(c.Gap(), units))
}

// price prints money with its label.
func price(x float64, currency string) string {
	if math.IsNaN(x) {
		return "not known"
	}
	if currency == "" {
		return fmt.Sprintf("%.2f", x)
	}
	return fmt.Sprintf("%.2f %s", x, currency)
}

// listed cuts from the boards that the plan lists, and no more of any.
func (d *Dock) listed(full *Cutting) (*Cutting, error) {
	if full.Err != nil {
		return full, full.Err
	}
	c := &Cutting{Saw: full.Saw, Wants: full.Wants}
	if full.complete && d.takesListed(full) {
		c.Uncut = full.Uncut // it keeps within the list, and no plan leaves fewer uncut
		return c, nil
	}
	stock, prices := d.yardStock(c, true)
	err := c.cut(d.trial.context(), stock, prices)
	return c, err
}

// takesListed reports whether a cutting uses no more boards than the plan lists.
func (d *Dock) takesListed(c *Cutting) bool {
	used := make([]int, len(d.plan.Stock))
	for _, b := range c.Boards {
		used[b.Stock]++
	}
	for i, n := range used {
		if n > d.plan.Stock[i].Count.Value {
			return false
		}
	}
	return true
}

// boxes checks the weight of the hardware on the list, if there is any, against the
// one that the dock is weighed with.
func (d *Dock) boxes() []measure.Check {
	f := &d.plan.Frame
	rs := rests{on(f.Hardware)}
	sum, any := 0.0, false
	for i := range d.plan.Shop.Items {
		t := &d.plan.Shop.Items[i]
		if t.Part.Value != "hardware" {
			continue
		}
		any = true
		rs = append(rs, on(t.Part), on(t.Need), on(t.Mass))
		sum += float64(float64(t.Need.Value) * t.Mass.Value)
	}
	if !any {
		return nil
	}
	return []measure.Check{{
		Name: "Weight of the hardware on the list", Kind: measure.Mass, Value: sum, Limit: f.Hardware.Value, Rule: srcBoxes,
		Rests: rs.assumptions(), Err: rs.err(),
	}}
}

// budget checks the bill against the plan's budget.
func (d *Dock) budget(c *Cutting) measure.Check {
	s := &d.plan.Shop
	bill := d.bill(c, d.finish())
	rs := append(dedupe(d.cutRests()), on(s.Budget), on(s.Tax), on(s.Delivery))
	out := measure.Check{
		Name: "Cost of everything on the list, tax and delivery with it", Value: bill.Total, Limit: s.Budget.Value, Rule: srcBudget,
		Rests: rs.assumptions(), Err: rs.err(),
	}
	if out.Err == nil {
		out.Err = bill.Err
	}
	if c.Err == nil && !math.IsNaN(c.Cost) {
		out.Notes = []string{fmt.Sprintf("in %s; the lumber bought by the board for %.2f, no plan under %.2f",
			currencyName(bill.Currency), c.Cost, c.Bound)}
	}
	return out
}

func currencyName(label string) string {
	if label == "" {
		return "a currency that the plan does not name"
	}
	return label
}
