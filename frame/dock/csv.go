package dock

import (
	"encoding/csv"
	"io"
	"math"
	"strconv"
	"strings"

	"example.org/floewright/lumber"
	"example.org/floewright/lumber/measure"
)

// The lists below are comma-separated values as RFC 4180 has them, with a line of
// column names that bear the unit, lines ended by a line feed, and a field left
// blank for what is not known. Units are those of the report's texts ([Report.Units]):
// in, lb and lbf, inches as decimals that hold a tape's sixteenths exactly, or mm, kg
// and N. Their errors are the writer's.

// A column is a kind of quantity as a list has it.
type column struct {
	unit  string // as column names end
	scale float64
	fine  int  // decimals
	plain bool // without noughts at the end
}

// columns of lengths, masses and forces, by the units of the report.
func (r *Report) columns() (length, mass, force column) {
	if r.Units == measure.SI {
		return column{"_mm", measure.Millimetre, 1, false}, column{"_kg", 1, 1, false}, column{"_N", 1, 0, false}
	}
	return column{"_in", measure.Inch, 4, true}, column{"_lb", measure.Pound, 1, false}, column{"_lbf", measure.PoundForce, 1, false}
}

// print prints a quantity in SI that is known.
func (c column) print(x float64) string {
	s := decimals(x/c.scale, c.fine)
	if c.plain && strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return s
}

// mostRows is how many pieces of a kind are listed: past what any dock has.
const mostRows = 100000

// WriteCutList writes one line for each piece, board by board, each board's rest
// behind its pieces, and then the pieces left without a board. The columns are
// board, section, length_in, bought (yes or no), piece, from_in, piece_in, or these in
// _mm; what is left over is the piece "rest", and a piece without a board has no board.
func (r *Report) WriteCutList(w io.Writer) error {
	length, _, _ := r.columns()
	rows := [][]string{{"board", "section", "length" + length.unit, "bought", "piece", "from" + length.unit, "piece" + length.unit}}
	if r.Shop != nil {
		for _, b := range r.Shop.Cutting.Boards {
			bought := "no"
			if b.Bought {
				bought = "yes"
			}
			head := []string{b.Name, b.Section, length.print(b.Length), bought}
			for _, p := range b.Pieces {
				rows = append(rows, append(head[:4:4], p.Name, length.print(p.At), length.print(p.Length)))
			}
			for _, o := range b.Offcuts {
				rows = append(rows, append(head[:4:4], "rest", length.print(o.At), length.print(o.Length)))
			}
		}
		for _, u := range r.Shop.Cutting.Uncut {
			if u.Count > mostRows {
				return &measure.Error{Field: "Uncut, number of " + u.Name, Kind: measure.Count, Value: float64(u.Count), Class: measure.ErrRange, Range: measure.Range{Kind: measure.Count, Hi: mostRows}}
			}
			for range u.Count {
				rows = append(rows, []string{"", u.Section, "", "", u.Name, "", length.print(u.Length)})
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
// with spares, that of the schedule: item, need, have, buy, and the mass of all that are
// needed, mass_lb or mass_kg, blank where it is not known.
func (r *Report) WriteHardwareList(w io.Writer) error {
	_, mass, _ := r.columns()
	mass.fine = 2
	rows := [][]string{{"item", "need", "have", "buy", "mass" + mass.unit}}
	if r.Shop != nil {
		for _, p := range r.Shop.Bill.Rows {
			if p.Kind != "hardware" {
				continue
			}
			row := []string{p.Item, "", "", "", mass.print(p.Mass)}
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
// one, people to lift one, trips, the sled's load, the pull and the brake on the slope,
// and the people for these: each_lb, load_lb, pull_lbf and brake_lbf, or each_kg, load_kg,
// pull_N and brake_N.
func (r *Report) WriteCarryList(w io.Writer) error {
	_, mass, force := r.columns()
	rows := [][]string{{"piece", "size", "count", "each" + mass.unit, "people", "trips", "load" + mass.unit, "pull" + force.unit, "brake" + force.unit, "crew"}}
	if r.Shop != nil {
		for _, h := range r.Shop.Carry {
			rows = append(rows, []string{
				h.Piece, h.Size, some(h.Count), mass.print(given(h.Each)), some(h.People), some(h.Trips),
				mass.print(given(h.Load)), force.print(given(h.Pull)), force.print(h.brake()), some(h.Crew),
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
