package plan

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"strings"

	"example.org/floewright/lumber/measure"
)

// JSON returns a starting plan as JSON text: joists with drums wedged in bays between
// them, a ladder and two people, and "unknown" wherever only the builder can know. A
// "_note" in every object says what its unknown fields mean and how they are measured,
// in the words of [Explain]; what is left out stays assumed. The text reads without a
// mistake ([Read]).
//
// Docks are at most 14.5 m long, as boards are. The error is a [*measure.Error] for a size outside of what is accepted, and for drums
// that find no room.
func (s Start) JSON() ([]byte, error) {
	_, text, err := s.plan()
	return text, err
}

// Remark says what [Start.JSON] makes of the number of drums, where that is not the one
// asked for or holds up too little: the note at the floats says the same. "" is nothing
// to say. Its errors are those of JSON.
func (s Start) Remark() (string, error) {
	l, _, err := s.plan()
	if err != nil {
		return "", err
	}
	return l.note, nil
}

// plan lays a new plan out, and writes it.
func (s Start) plan() (*startLayout, []byte, error) {
	if s.Units != measure.SI {
		s.Units = measure.US
	}
	l, err := s.lay()
	if err != nil {
		return nil, nil, err
	}
	w := &writer{means: map[string]string{}}
	for _, e := range Explain() {
		w.means[e.Path] = measure.Restate(e.Means, s.Units)
	}
	var b bytes.Buffer
	l.plan(w).write(&b, "")
	b.WriteByte('\n')
	if _, err := Read("new plan", bytes.NewReader(b.Bytes())); err != nil {
		return nil, nil, err
	}
	return l, b.Bytes(), nil
}

// unknown is the word that is legal everywhere.
const unknown = "unknown"

// plan fills the new plan in.
func (l *startLayout) plan(w *writer) *group {
	s := l.start
	name := strings.TrimSpace(s.Drum)
	if name == "" {
		name = "drum"
	}
	root := w.group("", "A starting plan: sizes and places are a proposal, nothing was measured. Write your own into it; \"unknown\" is legal everywhere.")
	root.put("name", s.title())
	root.put("units", s.pick("us", "si"))
	root.put("currency", unknown)

	frame := w.group("frame.", "")
	root.put("frame", frame)
	frame.put("length", s.text(s.Length))
	frame.put("width", s.text(s.Width))
	frame.put("joists_run", "across")
	own := "Bays " + strings.Trim(strings.Join(strings.Fields(fmt.Sprint(l.bays)), ", "), "[]") + " hold drums, those between them do not."
	if l.places != nil {
		own = "The drums lie under them, in two rows."
	}
	joists := w.group("frame.joists.", own)
	joists.put("size", s.pick("2x8", "38 mm x 184 mm"))
	joists.put("species", unknown)
	joists.put("marks_at", "near face")
	var marks []string
	for _, x := range l.marks {
		marks = append(marks, s.text(x))
	}
	joists.put("marks", marks)
	frame.put("joists", joists)
	rims := w.group("frame.rims.", "")
	rims.put("size", s.pick("2x10", "38 mm x 235 mm"))
	rims.put("species", unknown)
	rims.put("plies", s.plies())
	frame.put("rims", rims)
	decking := w.group("frame.decking.", "")
	decking.put("size", s.pick("2x6", "38 mm x 140 mm"))
	decking.put("screw", unknown)
	frame.put("decking", decking)

	drum := w.group("floats[].", strings.TrimSpace(l.note+" Put a tape round your own drums and one on a scale."))
	drum.put("name", name)
	drum.put("shape", "drum")
	drum.put("girth", s.text(s.Girth))
	drum.put("length", s.text(s.Long))
	drum.put("mass", measure.Mass.Format(s.Mass, s.Units))
	material, volume := unknown, unknown
	if s.Material != "" {
		material = s.Material
	}
	if s.Volume > 0 {
		volume = measure.Volume.Format(s.Volume, s.Units)
	}
	drum.put("material", material)
	drum.put("volume", volume)
	l.drums(w, drum)
	root.put("floats", []*group{drum})

	ladder := w.group("weights[].", "One object for each thing fixed to the dock.")
	ladder.put("name", "ladder")
	ladder.put("ladder", "yes")
	ladder.put("mass", s.pick("40 lb", "18 kg"))
	ladder.put("along", s.text(s.Length))
	ladder.put("across", s.text(s.Width/2))
	ladder.put("above", s.pick("0 in", "0 m"))
	root.put("weights", []*group{ladder})
	adult := w.group("people[].", "One object for each kind; two adults until you say who comes.")
	adult.put("who", "adult")
	adult.put("count", 2)
	adult.put("mass", s.pick("185 lb", "84 kg"))
	root.put("people", []*group{adult})

	l.ask(w, root, name)
	l.stock(w, root)
	return root
}

// drums puts in how the drums lie.
func (l *startLayout) drums(w *writer, drum *group) {
	s := l.start
	if l.places == nil {
		drum.put("lies", "across")
		drum.put("bears", "between joists")
		drum.put("tied", "yes")
		drum.put("bays", l.bays)
		var across []string
		for _, x := range l.across {
			across = append(across, s.text(x))
		}
		drum.put("marks", across)
		if l.stops > 0 {
			drum.put("stops", s.text(l.stops))
		}
		if l.blocks > 0 {
			drum.put("blocks", "yes")
		}
		if l.stops > 0 || l.blocks > 0 {
			drum.put("block_fastener", unknown)
			drum.put("block_fasteners", unknown)
		}
		return
	}
	drum.put("lies", "along")
	drum.put("bears", "under joists")
	drum.put("tied", "yes")
	var places []*group
	for i, at := range l.places {
		own := ""
		if i == 0 {
			own = "Middles of the drums."
		}
		g := w.group("floats[].places[].", own)
		g.put("along", s.text(at[0]))
		g.put("across", s.text(at[1]))
		places = append(places, g)
	}
	drum.put("places", places)
}

// ask puts in what only the builder, the lake and the offices can say.
func (l *startLayout) ask(w *writer, root *group, drum string) {
	put := func(prefix, own string, keys ...string) *group {
		g := w.group(prefix, own)
		for _, k := range keys {
			g.put(k, unknown)
		}
		return g
	}
	root.put("site", put("site.", "", "water", "temperature", "level_low", "level_high", "depth", "slope"))
	ice := put("ice.", "Fill this in on the day, at the holes.", "now", "season", "cracks", "wet", "inlets", "changed")
	hole := put("ice.holes[].", "One object for each hole: the pad's corners and middle, the walk from shore.", "when", "clear", "white", "gap", "layer", "water_below_top", "snow", "along", "across")
	hole.keys, hole.values = append([]string{"where"}, hole.keys...), append([]any{"pad, middle"}, hole.values...)
	ice.put("holes", []*group{hole})
	ice.put("weather", []*group{put("ice.weather[].", "One object for each of the last five days before \"now\", oldest first: without them no verdict on the ice has an answer.", "date", "high", "low")})
	ice.put("crossing", put("ice.crossing.", "", "mass", "people"))
	ice.put("parked", unknown)
	root.put("ice", ice)
	hardware := w.group("hardware.", "")
	hardware.put("joist_ends", put("hardware.joist_ends.", "Nails and screws also take edge and spacing; a hanger in_joist, steel, bracket_finish and its maker's figures down, up, lateral, along, to_and_fro; an angle in_joist, steel, bracket_finish, edge, end, spacing and its maker's figures lateral and along; -explain has them.", "by", "fastener", "count", "finish"))
	hardware.put("deck_finish", unknown)
	hardware.put("treatment", unknown)
	hardware.put("dries", unknown)
	for _, of := range []struct {
		list string
		keys []string
	}{{"ties", []string{"of", "strength", "efficiency", "parts", "point", "slack", "stiffness"}}, {"drums", []string{"held", "leak_tested", "bungs", "closed_at"}}} {
		g := put("hardware."+of.list+"[].", "", of.keys...)
		g.keys, g.values = append([]string{"floats"}, g.keys...), append([]any{drum}, g.values...)
		hardware.put(of.list, []*group{g})
	}
	root.put("hardware", hardware)
	root.put("mooring", put("mooring.", "Lines and anchors: one object each in \"lines\" and \"anchors\"; -explain has their fields.", "wind_speed", "bearing", "current", "hinged_to", "has_ramp", "hauled_out"))
	root.put("alongside", put("alongside.", "", "boat_comes"))
	root.put("season", put("season.", "Five dates or more in \"ice_ons\" and \"ice_outs\", each as { \"date\": \"2024-04-19\" }.", "latitude", "mean_depth"))
	root.put("local", put("local.", "", "reach", "most_reach", "most_area", "setback", "least_setback", "off_ice_by", "drums", "flotation_rule", "mains", "offices_asked"))
	root.put("shop", put("shop.", "", "tax", "delivery"))
}

// stock puts in a board for each piece.
func (l *startLayout) stock(w *writer, root *group) {
	s := l.start
	var boards []*group
	for i, b := range []struct {
		size  string
		piece float64
		n     int
	}{
		{s.pick("2x8", "38 mm x 184 mm"), s.Width - 2*float64(s.plies())*startJoist, len(l.marks)},
		{s.pick("2x10", "38 mm x 235 mm"), s.Length, 2 * s.plies()},
		{s.pick("2x6", "38 mm x 140 mm"), s.Length, int(math.Ceil(s.Width/startBoard - 1e-9))},
		{s.pick("2x8", "38 mm x 184 mm"), startStop, l.stopBoards()},
	} {
		if b.n == 0 {
			continue
		}
		own := ""
		if i == 0 {
			own = "Each piece from one board; longer ones than a yard has must be planned anew."
		}
		g := w.group("stock[].", own)
		g.quiet = i > 0
		g.put("size", b.size)
		g.put("length", s.board(b.piece))
		g.put("count", b.n)
		g.put("price", unknown)
		g.put("have", "no")
		boards = append(boards, g)
	}
	root.put("stock", boards)
}

// A writer knows what the fields mean.
type writer struct{ means map[string]string }

// A group is an object of the new plan.
type group struct {
	w      *writer
	prefix string // of its fields in the table
	own    string // the first line of its note
	quiet  bool   // without notes of its fields: one like it came before
	keys   []string
	values []any // text, number, list of either that is not empty, group, list of groups
}

func (w *writer) group(prefix, own string) *group { return &group{w: w, prefix: prefix, own: own} }

func (g *group) put(key string, value any) {
	g.keys, g.values = append(g.keys, key), append(g.values, value)
}

// notes says what the group is, and what its unknown fields mean.
func (g *group) notes() []string {
	var out []string
	if g.own != "" {
		out = append(out, g.own)
	}
	for i, key := range g.keys {
		if g.values[i] == unknown && !g.quiet {
			out = append(out, key+": "+g.w.means[g.prefix+key])
		}
	}
	if len(out) == 0 {
		out = []string{strings.TrimSuffix(g.w.means[strings.TrimSuffix(strings.TrimSuffix(g.prefix, "."), "[]")], ".")}
	}
	return out
}

// write writes the object as JSON.
func (g *group) write(b *bytes.Buffer, indent string) {
	inner := indent + "  "
	b.WriteString("{\n" + inner + `"_note": `)
	if notes := g.notes(); len(notes) == 1 {
		b.WriteString(quoted(notes[0]))
	} else {
		b.WriteString("[")
		for i, n := range notes {
			fmt.Fprintf(b, "%s\n%s  %s", comma(i), inner, quoted(n))
		}
		b.WriteString("\n" + inner + "]")
	}
	for i, key := range g.keys {
		fmt.Fprintf(b, ",\n%s%s: ", inner, quoted(key))
		switch v := g.values[i].(type) {
		case *group:
			v.write(b, inner)
		case []*group:
			b.WriteString("[")
			for k, one := range v {
				b.WriteString(comma(k) + "\n" + inner + "  ")
				one.write(b, inner+"  ")
			}
			b.WriteString("\n" + inner + "]")
		case []string:
			for k, one := range v {
				b.WriteString([2]string{"[", ", "}[min(k, 1)] + quoted(one))
			}
			b.WriteString("]")
		case []int:
			for k, one := range v {
				b.WriteString([2]string{"[", ", "}[min(k, 1)] + quoted(one))
			}
			b.WriteString("]")
		default:
			b.WriteString(quoted(v))
		}
	}
	b.WriteString("\n" + indent + "}")
}

func comma(i int) string {
	if i > 0 {
		return ","
	}
	return ""
}

// quoted returns a value as JSON on one line, its signs < and > as they are.
func quoted(v any) string {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(v); err != nil {
		return quoted(unknown) // texts, numbers and lists of them encode
	}
	return strings.TrimSuffix(b.String(), "\n")
}
