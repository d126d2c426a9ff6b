package lumber

import "strings"

// Weakest returns the least of each design value that the named species have at a
// grade and section: what an unknown stamp has to be taken for, when the yard sells
// those species, each value as printed. Naming none takes all species of the tables.
// G is the least, as for joints; Heavy is the greatest, for weights.
//
// The least of each is not quite the weakest piece: wet service spares a bending
// value of at most 1150 psi, so that a stronger grade can end up the weaker one.
// A mixture is therefore never spared.
//
// Whether the lumber is incised is not in the values: [Member] counts it as
// incised unless its Smooth says that the faces show no slits.
func Weakest(grade string, s Section, species ...string) (Grade, error) {
	if err := s.check(); err != nil {
		return Grade{}, err
	}
	all := len(species) == 0
	if all {
		t, err := loaded()
		if err != nil {
			return Grade{}, err
		}
		for _, k := range t.species {
			species = append(species, k.name)
		}
	}
	var least Grade
	var names []string
	var failed error
	for _, name := range species {
		g, err := Lookup(name, grade, s)
		if err != nil {
			failed = err
			if all { // not every species has every grade
				continue
			}
			return Grade{}, err
		}
		names = append(names, g.Species)
		if len(names) == 1 {
			least, least.Heavy = g, heavy(g)
			continue
		}
		least = weaker(least, g)
	}
	switch len(names) {
	case 0:
		return Grade{}, failed
	case 1:
		return Lookup(names[0], grade, s)
	}
	least.Species = "weakest of " + strings.Join(names, ", ")
	return least, nil
}

// weaker returns the lesser of two grades, value by value.
func weaker(a, b Grade) Grade {
	less := func(x, y Value) Value {
		if y.SI() < x.SI() {
			return y
		}
		return x
	}
	a.Fb, a.Ft, a.Fv = less(a.Fb, b.Fb), less(a.Ft, b.Ft), less(a.Fv, b.Fv)
	a.FcPerp, a.Fc = less(a.FcPerp, b.FcPerp), less(a.Fc, b.Fc)
	a.E, a.Emin = less(a.E, b.E), less(a.Emin, b.Emin)
	a.Light = less(light(a), light(b))
	a.Heavy = heavy(a)
	if h := heavy(b); h.SI() > a.Heavy.SI() {
		a.Heavy = h
	}
	a.G = less(a.G, b.G)
	if b.Widest > 0 && (a.Widest == 0 || b.Widest < a.Widest) {
		a.Widest = b.Widest
	}
	a.Table = mixedTable(a.Table, b.Table)
	return a
}

func light(g Grade) Value {
	if g.Light.none() {
		return g.G
	}
	return g.Light
}

func heavy(g Grade) Value {
	if g.Heavy.none() {
		return g.G
	}
	return g.Heavy
}
