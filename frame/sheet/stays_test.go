package sheet_test

import (
	"io"
	"strings"
	"testing"

	"example.org/floewright/frame/dock"
	"example.org/floewright/frame/plan"
	"example.org/floewright/frame/sheet"
	"example.org/floewright/lumber/measure"
)

// swapped is the swim platform with replacements.
func swapped(t *testing.T, swaps ...string) *dock.Dock {
	t.Helper()
	in, err := plan.Demo("swim")
	if err != nil {
		t.Fatal(err)
	}
	b, err := io.ReadAll(in)
	if err != nil {
		t.Fatal(err)
	}
	s := string(b)
	for i := 0; i < len(swaps); i += 2 {
		if !strings.Contains(s, swaps[i]) {
			t.Fatalf("no %q", swaps[i])
		}
		s = strings.Replace(s, swaps[i], swaps[i+1], 1)
	}
	d, err := dock.Read("swim", strings.NewReader(s))
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// TestPlanShowsStays: stops and blocks are on the plan, one rectangle for each, and its
// caption names the rows of figures that there are.
func TestPlanShowsStays(t *testing.T) {
	rows := []string{`["21-5/8 in", "5 ft", "8 ft 2-3/8 in"]`, `["3 ft", "7 ft 6 in"]`}
	bare := swapped(t, rows...)
	d := swapped(t, append([]string{`"tied": "yes",`, `"tied": "yes", "blocks": "yes", "block_fastener": "16d common nail", "block_fasteners": 3,`}, rows...)...)
	shape, err := d.Shape()
	if err != nil {
		t.Fatal(err)
	}
	picture := func(d *dock.Dock) string {
		p, ok := drawn(t, d, &dock.Report{Units: measure.US}).Picture("plan")
		if !ok {
			t.Fatal("no plan")
		}
		return p.SVG
	}
	without, with := picture(bare), picture(d)
	if n := strings.Count(with, `fill="#e4e4e4"`) - strings.Count(without, `fill="#e4e4e4"`); len(shape.Stays) < 12 || n != len(shape.Stays) {
		t.Errorf("%d blocks, %d more grey rectangles", len(shape.Stays), n)
	}
	if words := flat(with); !strings.Contains(words, "stops and blocks") || strings.Contains(flat(without), "stops and blocks") {
		t.Errorf("the caption: %s", words)
	}
	// Drums in bays have a mark across the dock alone: nothing stands at the top.
	if words := flat(with); strings.Contains(words, "at the top") || !strings.Contains(words, "on the left: floats' middles") || !strings.Contains(words, "at the foot: joists' near faces") {
		t.Errorf("the caption: %s", words)
	}
}

// flat returns the words of a picture on one line.
func flat(svg string) string {
	var out strings.Builder
	in := false
	for _, r := range svg {
		switch {
		case r == '<':
			in = true
			out.WriteByte(' ')
		case r == '>':
			in = false
		case !in:
			out.WriteRune(r)
		}
	}
	return strings.ReplaceAll(strings.Join(strings.Fields(out.String()), " "), "&#39;", "'")
}

// TestHeeledSaysFromWhere: whoever has the near side on his left looks from the far end,
// and the near end on his left, from the near side.
func TestHeeledSaysFromWhere(t *testing.T) {
	p, ok := drawn(t, swapped(t), &dock.Report{Units: measure.US}).Picture("heeled")
	if words := flat(p.SVG); !ok || !strings.Contains(words, "Seen from the far end; heights at the ") || !strings.Contains(words, "On the left: near side") {
		t.Errorf("%s", words)
	}
	// As wide as long, and people heaviest at an end.
	e := sheet.Heeled{Width: 3, Depth: 0.2, Deck: 0.04, Heel: 0.1, Height: 0.3, From: "Seen from the near side"}
	q, err := e.Draw()
	if err != nil || !strings.Contains(flat(q.SVG), "Seen from the near side.") {
		t.Errorf("%v: %s", err, flat(q.SVG))
	}
}
