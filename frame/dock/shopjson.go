package dock

import (
	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// The lists of a shop as the schema has them.
type (
	cuttingJSON struct {
		Kerf   measure.Number `json:"kerf"`
		Trim   measure.Number `json:"trim"`
		Boards []boardJSON    `json:"boards"`
		Uncut  []wantJSON     `json:"uncut"`
		Cost   measure.Number `json:"cost"`
		Bound  measure.Number `json:"bound"`
		Proven bool           `json:"proven"`
		Notes  []string       `json:"notes"`
		Error  *errorJSON     `json:"error"`
	}
	boardJSON struct {
		Board   string         `json:"board"`
		Section string         `json:"section"`
		Length  measure.Number `json:"length"`
		Bought  bool           `json:"bought"`
		Pieces  []pieceJSON    `json:"pieces"`
		Rest    []pieceJSON    `json:"rest"`
	}
	pieceJSON struct {
		Name   string         `json:"name"`
		From   measure.Number `json:"from"`
		Length measure.Number `json:"length"`
	}
	wantJSON struct {
		Name    string         `json:"name"`
		Section string         `json:"section"`
		Length  measure.Number `json:"length"`
		Count   int            `json:"count"`
	}
	billJSON struct {
		Currency string         `json:"currency"`
		Rows     []purchaseJSON `json:"rows"`
		Goods    measure.Number `json:"goods"`
		Delivery measure.Number `json:"delivery"`
		Tax      measure.Number `json:"tax"`
		Total    measure.Number `json:"total"`
		Error    *errorJSON     `json:"error"`
	}
	purchaseJSON struct {
		Item  string         `json:"item"`
		Kind  string         `json:"kind"`
		Need  *int           `json:"need"`
		Have  *int           `json:"have"`
		Lot   *int           `json:"lot"`
		Lots  *int           `json:"lots"`
		Buy   *int           `json:"buy"`
		Spare *int           `json:"spare"`
		Price measure.Number `json:"price"`
		Cost  measure.Number `json:"cost"`
		Mass  measure.Number `json:"mass"`
		Error *errorJSON     `json:"error"`
	}
	coatJSON struct {
		Name   string          `json:"name"`
		On     string          `json:"on"`
		Area   measure.Number  `json:"area"`
		Coats  *int            `json:"coats"`
		Volume measure.Number  `json:"volume"`
		Cans   *int            `json:"cans"`
		Gate   []string        `json:"gate"`
		Spread *measure.Source `json:"spread"`
		Error  *errorJSON      `json:"error"`
	}
	haulJSON struct {
		Piece  string         `json:"piece"`
		Size   string         `json:"size"`
		Count  *int           `json:"count"`
		Each   measure.Number `json:"each"`
		People *int           `json:"people"`
		Trips  *int           `json:"trips"`
		Load   measure.Number `json:"load"`
		Pull   measure.Number `json:"pull"`
		Brake  measure.Number `json:"brake"`
		Crew   *int           `json:"crew"`
		Error  *errorJSON     `json:"error"`
	}
)

// shop fills in the lists.
func (out *reportJSON) shop(s *Shop) {
	c := &s.Cutting
	cut := &cuttingJSON{
		Kerf: measure.Number(c.Saw.Kerf), Trim: measure.Number(c.Saw.Trim), Boards: []boardJSON{}, Uncut: []wantJSON{},
		Cost: measure.Number(c.Cost), Bound: measure.Number(c.Bound), Proven: c.Proven, Notes: append([]string{}, c.Notes...), Error: errorOf(c.Err),
	}
	for _, b := range c.Boards {
		cut.Boards = append(cut.Boards, boardOf(b))
	}
	for _, w := range c.Uncut {
		cut.Uncut = append(cut.Uncut, wantJSON{w.Name, w.Section, measure.Number(w.Length), w.Count})
	}
	out.Cutting = cut
	b := &s.Bill
	out.Bill = &billJSON{
		Currency: b.Currency, Rows: []purchaseJSON{}, Goods: measure.Number(b.Goods), Delivery: measure.Number(b.Delivery),
		Tax: measure.Number(b.Tax), Total: measure.Number(b.Total), Error: errorOf(b.Err),
	}
	for _, p := range b.Rows {
		row := purchaseJSON{Item: p.Item, Kind: p.Kind, Price: measure.Number(p.Price), Cost: measure.Number(p.Cost), Mass: measure.Number(p.Mass), Error: errorOf(p.Err)}
		if p.Err == nil {
			row.Need, row.Have, row.Lot, row.Lots, row.Buy, row.Spare = &p.Need, &p.Have, &p.Lot, &p.Lots, &p.Buy, &p.Spare
		}
		out.Bill.Rows = append(out.Bill.Rows, row)
	}
	for _, f := range s.Finish {
		coat := coatJSON{
			Name: f.Name, On: f.On, Area: measure.Number(f.Area), Coats: positive(f.Coats), Volume: measure.Number(f.Volume),
			Gate: append([]string{}, f.Gate...), Spread: f.Spread, Error: errorOf(f.Err),
		}
		if f.Err == nil {
			coat.Cans = &f.Cans
		}
		out.Finish = append(out.Finish, coat)
	}
	for _, h := range s.Carry {
		out.Carry = append(out.Carry, haulJSON{
			Piece: h.Piece, Size: h.Size, Count: positive(h.Count), Each: measure.Number(given(h.Each)), People: positive(h.People), Trips: positive(h.Trips),
			Load: measure.Number(given(h.Load)), Pull: measure.Number(given(h.Pull)), Brake: measure.Number(h.brake()), Crew: positive(h.Crew), Error: errorOf(h.Err),
		})
	}
}

func boardOf(b lumber.Sawn) boardJSON {
	out := boardJSON{Board: b.Name, Section: b.Section, Length: measure.Number(b.Length), Bought: b.Bought, Pieces: []pieceJSON{}, Rest: []pieceJSON{}}
	for _, p := range b.Pieces {
		out.Pieces = append(out.Pieces, pieceJSON{p.Name, measure.Number(p.At), measure.Number(p.Length)})
	}
	for _, o := range b.Offcuts {
		out.Rest = append(out.Rest, pieceJSON{"rest", measure.Number(o.At), measure.Number(o.Length)})
	}
	return out
}

// positive is null where 0 says that a count is not known.
func positive(n int) *int {
	if n == 0 {
		return nil
	}
	return &n
}
