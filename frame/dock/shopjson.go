package dock

import "example.org/floewright/lumber"

// The lists of a shop as the schema has them.
type (
	cuttingJSON struct {
		Kerf   number      `json:"kerf"`
		Trim   number      `json:"trim"`
		Boards []boardJSON `json:"boards"`
		Uncut  []wantJSON  `json:"uncut"`
		Cost   number      `json:"cost"`
		Bound  number      `json:"bound"`
		Proven bool        `json:"proven"`
		Notes  []string    `json:"notes"`
		Error  *errorJSON  `json:"error"`
	}
	boardJSON struct {
		Board   string      `json:"board"`
		Section string      `json:"section"`
		Length  number      `json:"length"`
		Bought  bool        `json:"bought"`
		Pieces  []pieceJSON `json:"pieces"`
		Rest    []pieceJSON `json:"rest"`
	}
	pieceJSON struct {
		Name   string `json:"name"`
		From   number `json:"from"`
		Length number `json:"length"`
	}
	wantJSON struct {
		Name    string `json:"name"`
		Section string `json:"section"`
		Length  number `json:"length"`
		Count   int    `json:"count"`
	}
	billJSON struct {
		Currency string         `json:"currency"`
		Rows     []purchaseJSON `json:"rows"`
		Goods    number         `json:"goods"`
		Delivery number         `json:"delivery"`
		Tax      number         `json:"tax"`
		Total    number         `json:"total"`
		Error    *errorJSON     `json:"error"`
	}
	purchaseJSON struct {
		Item  string     `json:"item"`
		Kind  string     `json:"kind"`
		Need  *int       `json:"need"`
		Have  *int       `json:"have"`
		Lot   *int       `json:"lot"`
		Lots  *int       `json:"lots"`
		Buy   *int       `json:"buy"`
		Spare *int       `json:"spare"`
		Price number     `json:"price"`
		Cost  number     `json:"cost"`
		Mass  number     `json:"mass"`
		Error *errorJSON `json:"error"`
	}
	coatJSON struct {
		Name   string      `json:"name"`
		On     string      `json:"on"`
		Area   number      `json:"area"`
		Coats  *int        `json:"coats"`
		Volume number      `json:"volume"`
		Cans   *int        `json:"cans"`
		Gate   []string    `json:"gate"`
		Spread *sourceJSON `json:"spread"`
		Error  *errorJSON  `json:"error"`
	}
	haulJSON struct {
		Piece  string     `json:"piece"`
		Size   string     `json:"size"`
		Count  *int       `json:"count"`
		Each   number     `json:"each"`
		People *int       `json:"people"`
		Trips  *int       `json:"trips"`
		Load   number     `json:"load"`
		Pull   number     `json:"pull"`
		Brake  number     `json:"brake"`
		Crew   *int       `json:"crew"`
		Error  *errorJSON `json:"error"`
	}
)

// shop fills in the lists.
func (out *reportJSON) shop(s *Shop) {
	c := &s.Cutting
	cut := &cuttingJSON{
		Kerf: number(c.Saw.Kerf), Trim: number(c.Saw.Trim), Boards: []boardJSON{}, Uncut: []wantJSON{},
		Cost: number(c.Cost), Bound: number(c.Bound), Proven: c.Proven, Notes: append([]string{}, c.Notes...), Error: errorOf(c.Err),
	}
	for _, b := range c.Boards {
		cut.Boards = append(cut.Boards, boardOf(b))
	}
	for _, w := range c.Uncut {
		cut.Uncut = append(cut.Uncut, wantJSON{w.Name, w.Section, number(w.Length), w.Count})
	}
	out.Cutting = cut
	b := &s.Bill
	out.Bill = &billJSON{
		Currency: b.Currency, Rows: []purchaseJSON{}, Goods: number(b.Goods), Delivery: number(b.Delivery),
		Tax: number(b.Tax), Total: number(b.Total), Error: errorOf(b.Err),
	}
	for _, p := range b.Rows {
		row := purchaseJSON{Item: p.Item, Kind: p.Kind, Price: number(p.Price), Cost: number(p.Cost), Mass: number(p.Mass), Error: errorOf(p.Err)}
		if p.Err == nil {
			row.Need, row.Have, row.Lot, row.Lots, row.Buy, row.Spare = &p.Need, &p.Have, &p.Lot, &p.Lots, &p.Buy, &p.Spare
		}
		out.Bill.Rows = append(out.Bill.Rows, row)
	}
	for _, f := range s.Finish {
		coat := coatJSON{
			Name: f.Name, On: f.On, Area: number(f.Area), Coats: positive(f.Coats), Volume: number(f.Volume),
			Gate: append([]string{}, f.Gate...), Spread: sourceOf(f.Spread), Error: errorOf(f.Err),
		}
		if f.Err == nil {
			coat.Cans = &f.Cans
		}
		out.Finish = append(out.Finish, coat)
	}
	for _, h := range s.Carry {
		out.Carry = append(out.Carry, haulJSON{
			Piece: h.Piece, Size: h.Size, Count: positive(h.Count), Each: number(given(h.Each)), People: positive(h.People), Trips: positive(h.Trips),
			Load: number(given(h.Load)), Pull: number(given(h.Pull)), Brake: number(h.brake()), Crew: positive(h.Crew), Error: errorOf(h.Err),
		})
	}
}

func boardOf(b lumber.Sawn) boardJSON {
	out := boardJSON{Board: b.Name, Section: b.Section, Length: number(b.Length), Bought: b.Bought, Pieces: []pieceJSON{}, Rest: []pieceJSON{}}
	for _, p := range b.Pieces {
		out.Pieces = append(out.Pieces, pieceJSON{p.Name, number(p.At), number(p.Length)})
	}
	for _, o := range b.Offcuts {
		out.Rest = append(out.Rest, pieceJSON{"rest", number(o.At), number(o.Length)})
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
