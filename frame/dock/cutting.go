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

// A Cutting says which piece comes from which board: as few pieces as can be are
// left without one, and of such plans the cheapest is taken, by the board. Where
// the price of a size is not known, the plan that buys the least length of it is.
//
// The search is stopped by a count of its steps, never by a clock: a plan that is
// not proven says in Bound how little another might cost.
type Cutting struct {
	Saw    lumber.Saw
	Wants  []lumber.Want
	Boards []lumber.Sawn // Price is the plan's own, and 0 where it is not known
	Uncut  []lumber.Want // pieces left without a board
	Cost   float64       // of the boards bought, in the plan's currency; NaN without a price
	Bound  float64       // in that currency: none leaves as few uncut and costs less; NaN without a price
	Proven bool          // none leaves fewer uncut, and of those none is cheaper or shorter
	Notes  []string
	Err    error // why there is no plan: what is not known

	Length, Pieces, Offcuts float64 // of the boards, the pieces and the offcuts together, m

	stock    []int // places in the plan's stock
	complete bool  // Boards hold every piece but those uncut
}

// Gap returns which share of its cost a better plan might save at the most, as
// [lumber.Outlay.Gap] does; 0 where there is no cost, or none is known.
func (c *Cutting) Gap() float64 {
	return lumber.Outlay{Cost: c.Cost, Bound: c.Bound}.Gap()
}

// Cutting plans the cutting of the joists, the rims' plies, the deck boards and
// the floats' stops from the plan's stock. The error is the context's: what the
// plan does not say is in [Cutting.Err].
//
// Rows of decking that no board spans butt on joists, staggered where they can
// be; rims and joists are never spliced. Stops are taken as two pieces of joist
// lumber that fit each bay which floats fill: our choice.
func (d *Dock) Cutting(ctx context.Context) (*Cutting, error) {
	if d.plan == nil {
		d = build(&plan.Plan{})
	}
	d.shop.Lock()
	defer d.shop.Unlock()
	kept := &d.shop.cutting[measure.US]
	if d.units == measure.SI {
		kept = &d.shop.cutting[measure.SI]
	}
	if *kept == nil {
		c, err := d.cutting(ctx)
		if err != nil {
			return nil, err
		}
		*kept = c
	}
	return (*kept).clone(), nil
}

func (d *Dock) cutting(ctx context.Context) (*Cutting, error) {
	c := &Cutting{Saw: d.saw(), Cost: math.NaN(), Bound: math.NaN()}
	if c.Err = d.cutRests().err(); c.Err == nil && len(d.plan.Stock) == 0 {
		c.Err = &measure.Error{Field: "stock", Class: measure.ErrUnknown, Want: "the boards in hand and those for sale"}
	}
	if c.Err != nil {
		return c, nil
	}
	c.complete = true
	c.Wants, c.Notes, c.Err = d.wants()
	if c.Err != nil {
		return c, nil
	}
	stock, prices := d.yardStock(c, false)
	if err := c.cut(ctx, stock, prices); err != nil {
		if ctx.Err() != nil {
			return nil, ctx.Err()
		}
		c.Err = err
	}
	return c, nil
}

// clone copies it, so that a caller's changes stay the caller's.
func (c *Cutting) clone() *Cutting {
	out := *c
	out.Wants, out.Uncut, out.Notes = slices.Clone(c.Wants), slices.Clone(c.Uncut), slices.Clone(c.Notes)
	out.Boards, out.stock = slices.Clone(c.Boards), slices.Clone(c.stock)
	for i := range out.Boards {
		b := &out.Boards[i]
		b.Pieces, b.Offcuts = slices.Clone(b.Pieces), slices.Clone(b.Offcuts)
	}
	return &out
}

func (d *Dock) saw() lumber.Saw {
	return lumber.Saw{Kerf: d.plan.Shop.Kerf.Value, Trim: d.plan.Shop.Trim.Value}
}

// cutRests returns what the cutting rests on.
func (d *Dock) cutRests() rests {
	f, s := &d.plan.Frame, &d.plan.Shop
	out := rests{
		on(f.Length), on(f.Width), on(f.Joists.Size), on(f.Rims.Size), on(f.Rims.Plies), on(f.Decking.Size), on(f.Decking.Gap),
		d.marks(), on(s.Kerf), on(s.Trim),
	}
	for i := range d.plan.Floats {
		if stops := d.plan.Floats[i].Stops; plan.Has(stops) || stops.At.Line > 0 { // left out: there are none
			out = append(out, on(stops))
		}
		out = append(out, on(d.plan.Floats[i].Blocks))
	}
	for i := range d.plan.Stock {
		b := &d.plan.Stock[i]
		out = append(out, on(b.Size), on(b.Length), on(b.Count), on(b.Have).standsIn("not for sale"))
	}
	return out
}

// sizeName returns the name under which a section is cut, blank if the dock has
// none like it: woods of one size share the first one's name, since boards carry
// no grade in the plan.
func (d *Dock) sizeName(s lumber.Section) string {
	for _, w := range []wood{d.joist, d.rim, d.board} {
		if same(w.section, s) {
			return w.given.Size.Value
		}
	}
	return ""
}

func same(a, b lumber.Section) bool {
	return math.Abs(a.Width-b.Width) <= slack && math.Abs(a.Depth-b.Depth) <= slack
}

// wants lists the pieces.
func (d *Dock) wants() (out []lumber.Want, notes []string, err error) {
	add := func(name string, w wood, length float64, count int) {
		if count > 0 {
			out = append(out, lumber.Want{Name: name, Section: d.sizeName(w.section), Length: length, Count: count})
		}
	}
	add("joist", d.joist, d.clear, len(d.centres))
	add("rim", d.rim, d.run(), 2*d.rimPlies)
	deck, notes, err := d.deckPieces()
	if err != nil {
		return nil, nil, err
	}
	out = append(out, deck...)
	bays := map[int]int{}
	for _, s := range d.stops() {
		bays[s.bay]++
	}
	for k := 1; k < len(d.centres); k++ {
		add(fmt.Sprintf("stop, bay %d", k), d.joist, d.room(k), bays[k])
	}
	return out, notes, nil
}

// deckPieces lists the boards of the deck; the last row is ripped to fit.
func (d *Dock) deckPieces() ([]lumber.Want, []string, error) {
	rows, covered := d.boards()
	if rows == 0 {
		return nil, nil, &measure.Error{Field: "frame.decking", Class: measure.ErrUnknown, Want: "boards that cover a deck"}
	}
	face, section := d.board.section.Depth, d.sizeName(d.board.section)
	last := float64(covered-float64(rows-1)) * face
	ripped := "deck board, ripped to " + measure.Length.Format(last, d.system())
	board := func(name string, length float64, n int) lumber.Want {
		return lumber.Want{Name: name, Section: section, Length: length, Count: n}
	}
	longest := 0.0
	for i := range d.plan.Stock {
		b := &d.plan.Stock[i]
		if s, err := size(b.Size.Value); err == nil && same(s, d.board.section) {
			longest = max(longest, b.Length.Value-2*d.plan.Shop.Trim.Value)
		}
	}
	whole := rows
	if face-last > slack {
		whole--
	}
	if longest <= 0 || longest >= d.run()-slack {
		var out []lumber.Want
		if whole > 0 {
			out = append(out, board("deck board", d.run(), whole))
		}
		if whole < rows {
			out = append(out, board(ripped, d.run(), 1))
		}
		return out, nil, nil
	}
	laid, err := lumber.Deck{
		Length: d.run(), Width: d.reach(), Joists: d.centres, Board: "2x6", Face: face, // the face stands for the name
		Gap: d.plan.Frame.Decking.Gap.Value, Least: min(face, 1e-6), Longest: longest,
	}.Rows()
	if err != nil {
		return nil, nil, err
	}
	var out []lumber.Want
	joints := 0
	for i, r := range laid.Rows {
		name := "deck board"
		if i == rows-1 && whole < rows {
			name = ripped
		}
		joints += len(r.Joints)
		for _, length := range r.Boards {
			at := len(out)
			for k, w := range out {
				if w.Name == name && math.Abs(w.Length-length) < 1e-9 {
					at = k
				}
			}
			if at == len(out) {
				out = append(out, board(name, length, 0))
			}
			out[at].Count++
		}
	}
	notes := append([]string{fmt.Sprintf("no board spans the deck: %d joints of deck boards lie on joists; "+
		"the checks of the frame take boards that run through", joints)}, laid.Notes...)
	return out, notes, nil
}

// yardStock turns the plan's stock into what pieces are cut from, and the prices
// of those for sale. Listed: every board is taken as in hand, as many as the plan
// lists. A board of which it is not known whether it is in hand is counted, and
// not for sale.
func (d *Dock) yardStock(c *Cutting, listed bool) (stock []lumber.Stock, prices []float64) {
	c.stock = nil
	for i := range d.plan.Stock {
		b := &d.plan.Stock[i]
		s, err := size(b.Size.Value)
		if err != nil || !(b.Length.Value > 0) {
			continue
		}
		out := lumber.Stock{Name: b.Size.Value + ", " + quantity(b.Length.Text, d.system()), Section: d.sizeName(s), Length: b.Length.Value}
		if out.Section == "" {
			continue
		}
		price := 0.0
		if listed || b.Have.Value == "yes" || b.Have.Known == measure.Unknown {
			out.InHand = min(b.Count.Value, mostBoards)
		} else {
			price = b.Price.Value
		}
		if out.InHand == 0 && !math.IsNaN(price) {
			out.Price = max(price, cent)
		}
		c.stock = append(c.stock, i)
		stock, prices = append(stock, out), append(prices, price)
	}
	return stock, prices
}

const (
	mostBoards = 2000   // that lumber.Cut takes of one length
	mostPrice  = 5000.0 // that it takes
	cent       = 0.01
)

// fits reports whether a piece can be cut from a board of the stock at all.
func fits(ctx context.Context, w lumber.Want, stock []lumber.Stock, saw lumber.Saw) bool {
	w.Count = 1
	_, err := lumber.Cut(ctx, []lumber.Want{w}, stock, saw)
	return err == nil
}

// cut fills in boards, pieces and costs.
func (c *Cutting) cut(ctx context.Context, stock []lumber.Stock, prices []float64) error {
	unpriced, factor := map[string]bool{}, 1.0
	for i := range stock {
		if math.IsNaN(prices[i]) {
			unpriced[stock[i].Section] = true
		}
		for stock[i].Price > mostPrice*factor {
			factor *= 10
		}
	}
	off := 0.0 // at most, between a price and what is searched with
	for i := range stock {
		switch s := &stock[i]; {
		case s.InHand > 0:
		case unpriced[s.Section]:
			s.Price = math.Round(s.Length*1000*100/10) / 100 // by length
			s.Price = min(s.Price, mostPrice)
		default:
			s.Price = max(cent, math.Round(s.Price/factor*100)/100)
			off = max(off, math.Abs(s.Price*factor-prices[i]))
		}
	}
	var wants []lumber.Want
	for _, w := range c.Wants {
		if fits(ctx, w, stock, c.Saw) {
			wants = append(wants, w)
		} else {
			c.Uncut = append(c.Uncut, w)
		}
	}
	if err := ctx.Err(); err != nil {
		return err
	}
	c.Cost, c.Bound, c.Proven = 0, 0, true
	if len(wants) == 0 {
		return nil
	}
	p, err := lumber.Cut(ctx, wants, stock, c.Saw)
	if err != nil {
		c.Cost, c.Bound, c.Proven = math.NaN(), math.NaN(), false
		return err
	}
	c.Boards, c.Uncut = p.Boards, append(c.Uncut, p.Uncut...)
	c.Length, c.Pieces, c.Offcuts, c.Proven = p.Total.Length, p.Total.Pieces, p.Total.Offcuts, p.Total.Proven
	bought := 0
	for i := range c.Boards {
		b := &c.Boards[i]
		at := b.Stock
		b.Stock = c.stock[at] // the place in the plan
		b.Price = 0
		if !b.Bought {
			continue
		}
		bought++
		c.Cost = float64(c.Cost + prices[at])
		if !math.IsNaN(prices[at]) {
			b.Price = prices[at]
		}
	}
	c.bound(p, unpriced, factor, off)
	return nil
}

// bound sets what another plan would cost at the least: the search's bound, less
// what rounding its prices may hide in each board that is bought.
func (c *Cutting) bound(p *lumber.Cuts, unpriced map[string]bool, factor, off float64) {
	if math.IsNaN(c.Cost) {
		c.Bound = math.NaN()
		return
	}
	pieces := 0.0
	for _, w := range c.Wants {
		pieces += float64(w.Count)
	}
	c.Cost = money(c.Cost)
	for _, o := range p.Sections {
		if !unpriced[o.Section] {
			c.Bound += float64(o.Bound * factor)
		}
	}
	if off > 1e-9 {
		c.Bound = max(0, c.Bound-float64(pieces*off))
		c.Proven = c.Proven && c.Bound >= c.Cost
	}
	c.Bound = min(c.Cost, money(c.Bound))
}

// money rounds to the cent.
func money(x float64) float64 { return math.Round(x*100) / 100 }
