package dock

import (
	"encoding/csv"
	"io"
	"math"
	"strconv"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// The lists below are comma-separated values as RFC 4180 has them, with a line of
// column names that bear the unit, lines ended by a line feed, and a field left
// blank for what is not known. Lengths are mm, masses kg, forces N, whatever the
// units of the report. Their errors are the writer's.

// mostRows is how many pieces of a kind are listed: past what any dock has.
const mostRows = 100000

// WriteCutList writes one line for each piece, board by board, each board's rest
// behind its pieces, and then the pieces left without a board. The columns are
// board, section, length_mm, bought (yes or no), piece, from_mm, piece_mm; what is
// left over is the piece "rest", and a piece without a board has no board.
func (r *Report) WriteCutList(w io.Writer) error {
	rows := [][]string{{"board", "section", "length_mm", "bought", "piece", "from_mm", "piece_mm"}}
	if r.Shop != nil {
		for _, b := range r.Shop.Cutting.Boards {
			bought := "no"
			if b.Bought {
				bought = "yes"
			}
			head := []string{b.Name, b.Section, millimetres(b.Length), bought}
			for _, p := range b.Pieces {
				rows = append(rows, append(head[:4:4], p.Name, millimetres(p.At), millimetres(p.Length)))
			}
			for _, o := range b.Offcuts {
				rows = append(rows, append(head[:4:4], "rest", millimetres(o.At), millimetres(o.Length)))
			}
		}
		for _, u := range r.Shop.Cutting.Uncut {
			if u.Count > mostRows {
				return &measure.Error{Field: "Uncut, number of " + u.Name, Kind: measure.Count, Value: float64(u.Count), Class: measure.ErrRange, Range: measure.Range{Kind: measure.Count, Hi: mostRows}}
			}
			for range u.Count {
				rows = append(rows, []string{"", u.Section, "", "", u.Name, "", millimetres(u.Length)})
			}
		}
	}
	return writeCSV(w, rows)
}

// WritePurchaseList writes the purchase list, a line each, and then the lines goods,
// delivery, tax and total. The columns are item, kind, need, have, lot, lots, buy,
// spare, price of a lot, cost, and the currency's label.
func (r *Report) WritePurchaseList(w io.Writer) error {
	rows := [][]string{{"item", "kind", "need", "have", "lot", "lots", "buy", "spare", "price", "cost", "currency"}}
	if r.Shop != nil {
		b := &r.Shop.Bill
		for _, p := range b.Rows {
			row := []string{p.Item, p.Kind, "", "", "", "", "", "", cents(p.Price), cents(p.Cost), b.Currency}
			if p.Err == nil {
				for i, n := range []int{p.Need, p.Have, p.Lot, p.Lots, p.Buy, p.Spare} {
					row[2+i] = strconv.Itoa(n)
				}
			}
			rows = append(rows, row)
		}
		for _, s := range []struct {
			name string
			x    float64
		}{{"goods", b.Goods}, {"delivery", b.Delivery}, {"tax", b.Tax}, {"total", b.Total}} {
			rows = append(rows, []string{s.name, "sum", "", "", "", "", "", "", "", cents(s.x), b.Currency})
		}
	}
	return writeCSV(w, rows)
}

// WriteHardwareList writes the hardware of the purchase list and, as what is needed
// with spares, that of the schedule: item, need, have, buy, and the mass in kg of all
// that are needed, blank where it is not known.
func (r *Report) WriteHardwareList(w io.Writer) error {
	rows := [][]string{{"item", "need", "have", "buy", "mass_kg"}}
	if r.Shop != nil {
		for _, p := range r.Shop.Bill.Rows {
			if p.Kind != "hardware" {
				continue
			}
			row := []string{p.Item, "", "", "", decimals(p.Mass, 2)}
			if p.Err == nil {
				row[1], row[2], row[3] = strconv.Itoa(p.Need), strconv.Itoa(p.Have), strconv.Itoa(p.Buy)
			}
			rows = append(rows, row)
		}
		for _, i := range r.Shop.Joints.Items {
			rows = append(rows, []string{i.What, strconv.Itoa(i.Count), "", "", ""})
		}
	}
	return writeCSV(w, rows)
}

// WriteCarryList writes what is carried to the lake: piece, size, count, the mass of
// one in kg, people to lift one, trips, the sled's load in kg, the pull and the brake
// on the slope in N, and the people for these.
func (r *Report) WriteCarryList(w io.Writer) error {
	rows := [][]string{{"piece", "size", "count", "each_kg", "people", "trips", "load_kg", "pull_N", "brake_N", "crew"}}
	if r.Shop != nil {
		for _, h := range r.Shop.Carry {
			rows = append(rows, []string{
				h.Piece, h.Size, some(h.Count), decimals(given(h.Each), 1), some(h.People), some(h.Trips),
				decimals(given(h.Load), 1), decimals(given(h.Pull), 0), decimals(h.brake(), 0), some(h.Crew),
			})
		}
	}
	return writeCSV(w, rows)
}

func writeCSV(w io.Writer, rows [][]string) error {
	c := csv.NewWriter(w)
	if err := c.WriteAll(rows); err != nil {
		return err
	}
	return c.Error()
}

func millimetres(x float64) string { return decimals(x/measure.Millimetre, 1) }

func cents(x float64) string { return decimals(x, 2) }

// decimals prints a number that is known.
func decimals(x float64, n int) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return ""
	}
	// An ulp does not tell two machines apart at a half.
	return strconv.FormatFloat(math.Round(x*math.Pow10(n)*(1+1e-12))/math.Pow10(n), 'f', n, 64)
}

// some prints a count of which 0 means that it is not known.
func some(n int) string {
	if n == 0 {
		return ""
	}
	return strconv.Itoa(n)
}

// alike reports whether two boards of a plan are cut alike.
func alike(a, b lumber.Sawn) bool {
	if a.Stock != b.Stock || a.Bought != b.Bought || len(a.Pieces) != len(b.Pieces) {
		return false
	}
	for i := range a.Pieces {
		if a.Pieces[i].Name != b.Pieces[i].Name || math.Abs(a.Pieces[i].Length-b.Pieces[i].Length) > 1e-9 {
			return false
		}
	}
	return true
}
