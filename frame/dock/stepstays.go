package dock

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.org/floewright/frame/plan"
	"example.org/floewright/lumber/measure"
)

// drums says what is done with the drums of a kind before they are built in. Those that
// are known to have held what harms are not opened: others take their place.
func (w *work) drums(i int, name string) {
	held := "What was in it before: " + name
	each, gate := "Each "+name, []string{"it is known what it held: " + w.now(held)}
	stop := "a drum with an unknown residue is not opened, drilled, cut or heated; it goes back"
	if duty := w.drumOf(i); duty != nil && (duty.Held.Value == "poison or solvent" || duty.Held.Value == "oil or fuel") {
		w.add(garage, fmt.Sprintf("Each %s held %s: do not rinse, open, drill, cut or heat it. Leave it closed, out of the sun and away from fire, and have it fetched by a licensed reconditioner, or take it back to whoever filled it. Other drums take its place.", name, duty.Held.Value),
			nil, []string{"a drum that held " + duty.Held.Value + " is no float: not one is rinsed, opened or built in; its rinsing water is waste that no ground and no drain takes"}, []string{held})
		each, gate = "Each drum that takes its place", []string{"it is known what the other one held, and it is harmless: nothing, food or soap"}
		stop = "a drum of unknown or harmful residue is not opened, drilled, cut or heated; it goes back"
	}
	w.add(garage, fmt.Sprintf("%s: rinse, leak-test under water, never with compressed air, dry, and close it at %s, bungs in the ends level at the sides; number it.", each, w.closing(name)),
		gate, []string{stop}, []string{"Leak test: " + name, "Bungs in the ends, level at the sides: " + name, "Suction in the closed drum at its coldest: " + name})
}

// anchors says how the anchors get to their places: each is a load on the ice of its own.
func (w *work) anchors(gates []string) {
	var at []string
	for i := range w.plan.Mooring.Anchors {
		a := &w.plan.Mooring.Anchors[i]
		text := called(a.Name, "anchor "+strconv.Itoa(i+1))
		if plan.Has(a.Mass) {
			text += ", " + measure.Mass.Format(a.Mass.Value, w.units) + ","
		} else {
			text += ", not weighed,"
		}
		if plan.Has(a.Along) && plan.Has(a.Across) {
			text += " at " + w.tape(a.Along.Value) + " along, " + w.tape(a.Across.Value) + " across"
		} else {
			text += " at a place that the plan does not say"
		}
		at = append(at, text)
	}
	if len(at) == 0 {
		return
	}
	w.add(onTheIce, "Set each anchor at its place, from a boat once the dock floats, or from the ice, one at a time, through a hole of its own: "+listed(at, 12)+".",
		append(slices.Clone(gates), "from the ice: the ice at that place was drilled too, for the anchor with all who handle it; the hole is away from the pad and from every way, and is fenced afterwards"),
		[]string{"a crack or water at the hole: everybody back from it, the anchor stays where it is", "nobody stands between an anchor and its hole, in a loop of its line, or at the hole without a rope to shore"}, []string{"the carry list", "ice.crossing", "mooring.anchors"})
}

// tapeFrom says from where marks along the joists count.
func (w *work) tapeFrom() string {
	if w.across {
		return "from the near side"
	}
	return "from the near end"
}

// stayMarks lists the near faces of stops and blocks by bay, bays alike together; "" where
// there are none.
func (w *work) stayMarks() string {
	var marks, bays []string
	stays := w.stays()
	for i := 0; i < len(stays); {
		bay := stays[i].bay
		var at []string
		for ; i < len(stays) && stays[i].bay == bay; i++ {
			at = append(at, w.tape(w.face(stays[i])))
		}
		mark, name := strings.Join(at, ", "), strconv.Itoa(bay)
		if k := slices.Index(marks, mark); k >= 0 {
			bays[k] += ", " + name
			continue
		}
		marks, bays = append(marks, mark), append(bays, name)
	}
	var out []string
	for k, mark := range marks {
		word := "bay "
		if strings.Contains(bays[k], ",") {
			word = "bays "
		}
		out = append(out, word+bays[k]+": "+mark)
	}
	return strings.Join(out, "; ")
}
