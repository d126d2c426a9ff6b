package layout

// release says which ends of members turn freely.
//
// An end that butts on another piece passes no bending moment: nails and hangers
// give. But a piece that others only butt on, and that butts on nothing itself,
// would then roll about its own axis; the outermost of those that butt on it hold
// it. A piece that butts at both ends carries no torque, since its ends turn in
// their nails; where stiff pieces cross it between them, it does there. A splice
// that passes no moment is a hinge.
func (l *Layout) release() {
	type end struct{ piece, end int } // end as in joint
	butts := map[end]int{}            // to the joint
	for k, j := range l.joints {
		if j.end != 0 && !l.Drawing.Pieces[j.p].Stiff {
			butts[end{j.p, j.end}] = k
		}
	}
	others := make([][]int, len(l.Nodes)) // joints at each node
	node := make([]int, len(l.joints))
	for k, j := range l.joints {
		node[k] = l.nearest(j.p, l.bars[j.p].along(l.bars[j.q].c))
		others[node[k]] = append(others[node[k]], k)
	}
	held := map[end]bool{} // not hinged after all
	// turns reports whether piece p is hinged on the piece at a joint.
	turns := func(k int) bool {
		j := l.joints[k]
		_, ok := butts[end{j.p, j.end}]
		return j.end != 0 && ok && !held[end{j.p, j.end}]
	}
	rests := make([]bool, len(l.bars)) // butts on something itself
	for _, j := range l.joints {
		if j.end != 0 {
			rests[j.p] = true
		}
	}
	for q := range l.bars {
		if rests[q] {
			continue
		}
		var on []int // joints on it, in order
		for _, s := range l.stations[q] {
			for _, k := range others[s.node] {
				if j := l.joints[k]; j.q == q || j.p == q {
					on = append(on, k)
				}
			}
		}
		if len(on) == 0 {
			continue
		}
		for _, k := range on {
			if node[k] == node[on[0]] || node[k] == node[on[len(on)-1]] {
				held[end{l.joints[k].p, l.joints[k].end}] = true
			}
		}
	}
	for i := range l.bars {
		members := l.byPiece[i]
		if len(members) == 0 {
			continue
		}
		free := 0
		for _, e := range []int{-1, 1} {
			k, ok := butts[end{i, e}]
			if !ok {
				continue
			}
			free++
			if held[end{i, e}] {
				continue
			}
			for _, m := range members {
				// The end of the lesser coordinate is that of From where To lies past it.
				if first := (e < 0) == (l.bars[i].sign > 0); first && l.Members[m].I == node[k] {
					l.Members[m].HingeI = true
				} else if !first && l.Members[m].J == node[k] {
					l.Members[m].HingeJ = true
				}
			}
		}
		if free == 2 {
			l.Members[members[0]].Untwist = true
			for _, s := range l.stations[i][1 : len(l.stations[i])-1] {
				for _, k := range others[s.node] {
					if j := l.joints[k]; j.end == 0 || j.q == i && !turns(k) {
						l.Members[members[len(members)-1]].Untwist = true
					}
				}
			}
		}
		p := &l.Drawing.Pieces[i]
		for _, s := range p.Splices {
			if !p.hinged(s) {
				continue
			}
			n := l.nearest(i, s.At)
			if l.Members[members[0]].I == n {
				l.Members[members[0]].HingeI = true // at its very end
			}
			for _, m := range members {
				if l.Members[m].J == n {
					l.Members[m].HingeJ = true
				}
			}
		}
	}
}
