package lumber

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"example.org/floewright/lumber/measure"
)

// A cutBoard is a board of a plan and what is cut from each clear stretch of it.
type cutBoard struct {
	source cutSource
	taken  map[stretch][]int32
}

// write turns a plan in numbers into boards, in the order of the stock, and adds
// up what they cost.
func (c *Cuts) write(j *cutJob, plan cutPlan, section string, wants []Want, stock []Stock, saw Saw) {
	o := Outlay{Section: section}
	next := make([]int, len(j.kinds)) // the next piece of a kind
	boards, uncut := j.boards(plan)
	bought := map[int]int{}
	for _, b := range boards {
		s := stock[b.source.stock]
		out := Sawn{Name: s.label(), Section: section, Stock: b.source.stock, Length: s.Length}
		if b.source.board == none {
			bought[b.source.stock]++
			o.Bought++
			out.Bought, out.Price = true, math.Round(s.Price*100)/100
			out.Name += fmt.Sprintf(", bought %d", bought[b.source.stock])
		} else {
			o.InHand++
			out.Name += fmt.Sprintf(", in hand %d", b.source.board+1)
		}
		for _, str := range saw.clear(s.Length, s.Defects) {
			j.lay(&out, str, b.taken[str], next, wants)
		}
		o.Length += out.Length
		for _, p := range out.Pieces {
			o.Pieces += p.Length
		}
		for _, p := range out.Offcuts {
			o.Offcuts += p.Length
		}
		c.Boards = append(c.Boards, out)
	}
	var missed int64
	for i, n := range uncut {
		missed += n * j.miss[i]
		for range n {
			c.miss(wants[j.kinds[i].wants[next[i]]])
			next[i]++
		}
	}
	o.Cost = float64(plan.cost-missed) / 100
	o.Bound = float64(max(0, plan.bound-missed)) / 100
	o.Proven = plan.bound >= plan.cost
	c.Sections = append(c.Sections, o)
	c.Total.add(o)
}

// add adds a section to the total.
func (t *Outlay) add(o Outlay) {
	t.Cost = math.Round((t.Cost+o.Cost)*100) / 100
	t.Bound = math.Round((t.Bound+o.Bound)*100) / 100
	t.Proven = t.Proven && o.Proven
	t.InHand += o.InHand
	t.Bought += o.Bought
	t.Length += o.Length
	t.Pieces += o.Pieces
	t.Offcuts += o.Offcuts
}

// miss adds a piece to those left uncut.
func (c *Cuts) miss(w Want) {
	w.Count = 1
	if n := len(c.Uncut); n > 0 {
		last := c.Uncut[n-1]
		last.Count = 1
		if last == w {
			c.Uncut[n-1].Count++
			return
		}
	}
	c.Uncut = append(c.Uncut, w)
}

// boards puts the bins of a plan together into boards, those in hand first, and
// counts what is left uncut.
func (j *cutJob) boards(plan cutPlan) (boards []cutBoard, uncut []int64) {
	uncut = make([]int64, len(j.kinds))
	used := make([]int, len(j.bins)) // sources of a bin
	columns := slices.Clone(plan.boards)
	slices.SortStableFunc(columns, func(a, b cutColumn) int { return slices.Compare(b.take, a.take) })
	for _, c := range columns {
		if c.bin == none {
			uncut[slices.Index(c.take, 1)]++
			continue
		}
		src := j.sources[c.bin][0]
		if src.board != none {
			src = j.sources[c.bin][used[c.bin]]
			used[c.bin]++
			at := slices.IndexFunc(boards, func(b cutBoard) bool {
				return b.source.stock == src.stock && b.source.board == src.board
			})
			if at >= 0 { // another stretch of a board that is cut already
				boards[at].taken[src.stretch] = c.take
				continue
			}
		}
		boards = append(boards, cutBoard{src, map[stretch][]int32{src.stretch: c.take}})
	}
	slices.SortStableFunc(boards, func(a, b cutBoard) int {
		if hand := (a.source.board == none) != (b.source.board == none); hand {
			return cmp.Compare(b.source.board, a.source.board) // none is less than any
		}
		return cmp.Or(cmp.Compare(a.source.stock, b.source.stock), cmp.Compare(a.source.board, b.source.board))
	})
	return boards, uncut
}

// lay puts the pieces taken from a stretch on the board one after another, the
// longest first, and what is left behind them as an offcut.
func (j *cutJob) lay(b *Sawn, str stretch, take []int32, next []int, wants []Want) {
	at := str.from
	for i, n := range take {
		for range n {
			want := j.kinds[i].wants[next[i]]
			next[i]++
			w := wants[want]
			b.Pieces = append(b.Pieces, Piece{Name: w.Name, Want: want, At: metres(at), Length: w.Length})
			at += j.size[i]
		}
	}
	if at >= str.to {
		return
	}
	name := b.Name + ", rest"
	if n := len(b.Offcuts); n > 0 {
		name += fmt.Sprintf(" %d", n+1)
	}
	b.Offcuts = append(b.Offcuts, Offcut{Name: name, At: metres(at), Length: metres(str.to - at)})
}

// label is the name of a stock, or what stands for it.
func (s Stock) label() string {
	if s.Name != "" {
		return s.Name
	}
	return s.Section + ", " + measure.Length.Format(s.Length, measure.US)
}

// Offcuts returns the offcuts of at least a length, m, as stock in hand for
// another plan, each by its name.
func (c *Cuts) Offcuts(least float64) []Stock {
	var out []Stock
	for _, b := range c.Boards {
		for _, o := range b.Offcuts {
			if o.Length >= least {
				out = append(out, Stock{Name: o.Name, Section: b.Section, Length: o.Length, InHand: 1})
			}
		}
	}
	return out
}
