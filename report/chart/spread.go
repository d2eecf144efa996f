package chart

import "slices"

// spread moves labels along a line, as little as may be, until none overlaps
// another one and all lie between from and to. want are their middles, in
// order, and wide what each takes. It returns the new middles, and false where
// there is not room enough.
func spread(want, wide []pt, gap, from, to pt) ([]pt, bool) {
	n := len(want)
	if n == 0 {
		return nil, true
	}
	// With the room of the labels before each taken off, they need only be in
	// order: neighbours that are not are pooled at their mean.
	room := make([]pt, n)
	for i := 1; i < n; i++ {
		room[i] = room[i-1] + (wide[i-1]+wide[i])/2 + gap
	}
	low, high := from+wide[0]/2, to-wide[n-1]/2-room[n-1]
	if low > high+1e-9 {
		return nil, false
	}
	type pool struct {
		sum pt
		n   int
	}
	var pools []pool
	for i := range n {
		pools = append(pools, pool{want[i] - room[i], 1})
		for len(pools) > 1 {
			a, b := pools[len(pools)-2], pools[len(pools)-1]
			if a.sum*pt(b.n) <= b.sum*pt(a.n) {
				break
			}
			pools = append(pools[:len(pools)-2], pool{a.sum + b.sum, a.n + b.n})
		}
	}
	out := make([]pt, 0, n)
	for _, p := range pools {
		at := min(max(p.sum/pt(p.n), low), high)
		for range p.n {
			out = append(out, at+room[len(out)])
		}
	}
	return out, true
}

// flag is a wavelength, or several near one another, with the text that stands
// for it.
type flag struct {
	from, to float64
	text     string
}

// gathered joins the two flags that are nearest to one another, and so on until
// there are no more than most. say makes the text of a joined flag.
func gathered(flags []flag, most int, say func(from, to float64) string) []flag {
	flags = slices.Clone(flags)
	for len(flags) > max(most, 1) {
		nearest := 1
		for i := 1; i < len(flags); i++ {
			if flags[i].to-flags[i-1].from < flags[nearest].to-flags[nearest-1].from {
				nearest = i
			}
		}
		a, b := flags[nearest-1], flags[nearest]
		joined := flag{from: min(a.from, b.from), to: max(a.to, b.to)}
		joined.text = say(joined.from, joined.to)
		flags = slices.Replace(flags, nearest-1, nearest+1, joined)
	}
	return flags
}
