package dock

import (
	"fmt"
	"math"

	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

// A Bill is the purchase list and what it costs, in the plan's currency. A number
// that is not known, or rests on one, is NaN.
type Bill struct {
	Currency string // label; may be blank
	Rows     []Purchase
	Goods    float64 // all rows
	Delivery float64
	Tax      float64 // on goods and delivery
	Total    float64
	Err      error // the first value without which there is no total
}

// A Purchase is one row of the list.
type Purchase struct {
	Item  string
	Kind  string // "lumber", "hardware", "coating" or "other"
	Need  int    // boards, pieces or cans
	Have  int
	Lot   int     // sold so many together
	Lots  int     // to buy
	Buy   int     // Lots of Lot each
	Spare int     // left over of what is in hand and bought
	Price float64 // of a lot, in the plan's currency
	Cost  float64 // of Buy, in the plan's currency
	Mass  float64 // of Need, kg; NaN where nothing says it
	Err   error   // why there is no number to buy
}

// purchase fills in what is to be bought; price is that of a lot.
func purchase(item, kind string, need, have, lot int, price, mass float64) Purchase {
	p := Purchase{Item: item, Kind: kind, Need: need, Have: have, Lot: max(1, lot), Price: price, Mass: mass}
	short := max(0, need-have)
	p.Lots = (short + p.Lot - 1) / p.Lot
	p.Buy = p.Lots * p.Lot
	p.Spare = have + p.Buy - need
	p.Cost = 0
	if p.Lots > 0 {
		p.Cost = money(float64(p.Lots) * price)
	}
	return p
}

// noPurchase is a row of which it is not known how many to buy.
func noPurchase(item, kind string, price float64, why error) Purchase {
	return Purchase{Item: item, Kind: kind, Lot: 1, Price: price, Cost: math.NaN(), Mass: math.NaN(), Err: why}
}

// bill makes the purchase list: lumber by the cutting, the items of the plan,
// and the coatings by the can.
func (d *Dock) bill(c *Cutting, finish []Coat) Bill {
	s := &d.plan.Shop
	b := Bill{Currency: d.plan.Currency.Value}
	for i := range d.plan.Stock {
		if p, used := d.boardRow(c, i); used {
			b.Rows = append(b.Rows, p)
		}
	}
	if c.Err != nil && len(d.plan.Stock) == 0 {
		b.Rows = append(b.Rows, noPurchase("lumber", "lumber", math.NaN(), c.Err))
	}
	for _, w := range c.Uncut {
		item := fmt.Sprintf("board for %d x %s of %s, %s", w.Count, w.Name, measure.Length.Format(w.Length, d.system()), w.Section)
		b.Rows = append(b.Rows, noPurchase(item, "lumber", math.NaN(), &measure.Error{
			Field: "stock", Class: measure.ErrUnknown, Want: "a board that holds it, in hand or for sale",
		}))
	}
	for i := range s.Items {
		t := &s.Items[i]
		kind := t.Part.Value
		rs := rests{on(t.Need), counted(t.Have), on(t.Lot)}
		if err := rs.err(); err != nil {
			b.Rows = append(b.Rows, noPurchase(called(t.Name, "an item"), kind, t.Price.Value, err))
			continue
		}
		b.Rows = append(b.Rows, purchase(called(t.Name, "an item"), kind, t.Need.Value, t.Have.Value, t.Lot.Value,
			t.Price.Value, float64(t.Need.Value)*t.Mass.Value))
	}
	for i, f := range finish {
		if i >= len(s.Coatings) {
			break // what the library adds has no can
		}
		price := s.Coatings[i].Price.Value
		if f.Err != nil {
			b.Rows = append(b.Rows, noPurchase(f.Name, "coating", price, f.Err))
			continue
		}
		b.Rows = append(b.Rows, purchase(f.Name, "coating", f.Cans, 0, 1, price, math.NaN()))
	}
	b.sum(s, d)
	return b
}

// boardRow is the row of one entry of the stock; used is false where nothing is
// cut from it and nothing of it is in hand.
func (d *Dock) boardRow(c *Cutting, i int) (p Purchase, used bool) {
	b := &d.plan.Stock[i]
	name := called(b.Size, "a board") + ", " + quantity(b.Length.Text, d.system())
	if b.Length.Text == "" {
		name = called(b.Size, "a board")
	}
	if c.Err != nil {
		return noPurchase(name, "lumber", b.Price.Value, c.Err), true
	}
	need := 0
	mass := math.NaN()
	for _, s := range c.Boards {
		if s.Stock == i {
			need++
		}
	}
	have := 0
	if b.Have.Value == "yes" {
		have = b.Count.Value
	}
	if s, err := size(b.Size.Value); err == nil {
		for _, w := range []wood{d.joist, d.rim, d.board} {
			if plan.Has(w.given.Weighed) || !same(w.section, s) {
				continue
			}
			if m, err := w.mass(b.Length.Value, d.plan.Frame.Moisture.Value); err == nil {
				mass = m * float64(need)
				break
			}
		}
	}
	price := b.Price.Value * float64(max(1, b.Lot.Value))
	p = purchase(name, "lumber", need, have, b.Lot.Value, price, mass)
	if b.Lot.Value == 0 || b.Have.Known == measure.Unknown {
		p.Price, p.Cost = b.Price.Value, math.NaN()
		p.Err = &measure.Error{Field: b.Lot.Path, Class: measure.ErrUnknown, Want: "it written into the plan"}
		if b.Lot.Value != 0 {
			p.Err = &measure.Error{Field: b.Have.Path, Class: measure.ErrUnknown, Want: "yes or no"}
		}
	}
	return p, need > 0 || have > 0
}

// sum adds up; what is not known stays so.
func (b *Bill) sum(s *plan.Shop, d *Dock) {
	b.Goods = 0
	for _, r := range b.Rows {
		b.Goods += r.Cost
		if b.Err == nil && math.IsNaN(r.Cost) {
			b.Err = r.Err
			if b.Err == nil {
				b.Err = &measure.Error{Field: "price of " + r.Item, Class: measure.ErrUnknown, Want: "it written into the plan"}
			}
		}
	}
	b.Goods = money(b.Goods)
	b.Delivery, b.Tax = s.Delivery.Value, math.NaN()
	if plan.Has(s.Tax) {
		b.Tax = money(s.Tax.Value * (b.Goods + b.Delivery))
	}
	b.Total = money(b.Goods + b.Delivery + b.Tax)
	for _, r := range []rest{on(s.Delivery), on(s.Tax)} {
		if b.Err == nil {
			b.Err = rests{r}.err()
		}
	}
}

// total says the total in words: "717.97 EUR in all".
func (b *Bill) total() string {
	if b.Currency == "" {
		return amount(b.Total) + " in all, in " + currencyName("")
	}
	return amount(b.Total) + " " + b.Currency + " in all"
}

// counted is a count of which none is a number as good as others.
func counted(c plan.Count) rest {
	r := on(c)
	r.missing = c.Known == measure.Unknown
	return r
}
