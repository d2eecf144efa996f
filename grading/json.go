package grading

import (
	"encoding/json"
	"math"
	"stonewrit/grading/phrase"

	"stonewrit/grading/identify"
	"stonewrit/grading/reading"
	"stonewrit/grading/stone"
)

// The types below are the object that check --json prints, one a line. Their
// keys are a contract: they may grow, and never change their meaning.

type jsonStone struct {
	File     string               `json:"file"`
	Stone    string               `json:"stone,omitempty"`
	Claims   map[string]jsonClaim `json:"claims,omitempty"`
	Tests    []jsonTest           `json:"tests,omitempty"`
	Rivals   []jsonRival          `json:"rivals,omitempty"`
	Next     []jsonNext           `json:"next,omitempty"`
	Values   *jsonValues          `json:"values,omitempty"`
	Weight   *jsonWeight          `json:"weight,omitempty"`
	Caveats  []phrase.Line        `json:"caveats,omitempty"`
	Noted    []string             `json:"also_noted,omitempty"`
	Problems []stone.Problem      `json:"problems"`
}

type jsonClaim struct {
	Opinion  *string       `json:"opinion"`
	Standing string        `json:"standing"`
	Because  []phrase.Line `json:"because"`
}

type jsonTest struct {
	Index    int         `json:"index"`
	Test     string      `json:"test"`
	Verdict  string      `json:"verdict"`
	Value    phrase.Line `json:"value"`
	Expected phrase.Line `json:"expected"`
	Because  phrase.Line `json:"because"`
	Telling  bool        `json:"telling"`
}

type jsonRival struct {
	Material string      `json:"material"`
	Because  phrase.Line `json:"not_excluded_because"`
}

type jsonNext struct {
	Test         string      `json:"test"`
	WouldExclude []string    `json:"would_exclude"`
	Caution      phrase.Line `json:"caution,omitempty"`
}

type jsonValues struct {
	RI            *jsonIndex           `json:"ri,omitempty"`
	ByPlace       map[string]jsonIndex `json:"ri_by_place,omitempty"`
	Birefringence *jsonValue           `json:"birefringence,omitempty"`
	Optic         *jsonOptic           `json:"optic,omitempty"`
	SG            *jsonValue           `json:"sg,omitempty"`
}

type jsonIndex struct {
	Low   float64 `json:"low,omitempty"`
	High  float64 `json:"high,omitempty"`
	U     float64 `json:"u,omitempty"`
	Edges int     `json:"edges,omitempty"`
	Over  float64 `json:"over,omitempty"`
}

type jsonValue struct {
	Value float64 `json:"value"`
	U     float64 `json:"u"`
}

type jsonOptic struct {
	Character string `json:"character,omitempty"`
	Sign      string `json:"sign,omitempty"`
}

type jsonWeight struct {
	Measured  float64     `json:"measured_ct,omitempty"`
	MeasuredU float64     `json:"measured_u,omitempty"`
	Estimated float64     `json:"estimated_ct,omitempty"`
	Low       float64     `json:"low_ct,omitempty"`
	High      float64     `json:"high_ct,omitempty"`
	Each      float64     `json:"each_ct,omitempty"`
	Count     int         `json:"count,omitempty"`
	Method    string      `json:"method,omitempty"`
	ImpliedSG float64     `json:"implied_sg,omitempty"`
	None      phrase.Line `json:"no_estimate,omitempty"`
}

// Unread is the object of a file that cannot be read: its name and problems
// alone.
func Unread(file string, problems stone.Problems) ([]byte, error) {
	return json.Marshal(jsonStone{File: file, Problems: problems})
}

// JSON is the examined stone as one line of JSON.
func (e *Examined) JSON(next []identify.Suggestion) ([]byte, error) {
	if e.Problems.Has(stone.Error) {
		return Unread(e.Stone.File(), e.Problems)
	}
	return json.Marshal(e.object(next))
}

func (e *Examined) object(next []identify.Suggestion) jsonStone {
	out := jsonStone{
		File: e.Stone.File(), Stone: e.Stone.Reference, Claims: map[string]jsonClaim{},
		Values: e.jsonValues(), Weight: e.jsonWeight(), Caveats: e.Caveats, Noted: e.Verdict.Noted,
		Problems: append([]stone.Problem{}, e.Problems...),
	}
	for _, c := range e.Claims() {
		j := jsonClaim{Standing: string(c.Claim.Standing), Because: append([]phrase.Line{}, c.Claim.Because...)}
		if opinion := c.Claim.Opinion; opinion != "" {
			j.Opinion = &opinion
		}
		out.Claims[c.Name] = j
	}
	for _, t := range e.Verdict.Tests {
		h := t.Test.Header()
		out.Tests = append(out.Tests, jsonTest{h.Index, h.Kind, string(t.Verdict), t.Value, t.Expected, t.Because, t.Telling})
	}
	for _, r := range e.Verdict.Rivals {
		out.Rivals = append(out.Rivals, jsonRival{r.Material.Name, r.Because})
	}
	for _, n := range next {
		out.Next = append(out.Next, jsonNext{n.Test, n.Excludes, n.Caution})
	}
	return out
}

func (e *Examined) jsonValues() *jsonValues {
	var v jsonValues
	if best := e.Values.Best(); best != nil {
		ri := indexJSON(best)
		v.RI = &ri
		v.ByPlace = e.byPlace(best)
		if best.Edges == 2 {
			v.Birefringence = &jsonValue{rounded(best.Birefringence, 4), roundedU(best.BirefringenceU)}
		}
	}
	if c := e.Values.Character; c.Kind != "" || c.Sign != "" {
		v.Optic = &jsonOptic{c.Kind, map[string]string{"+": "positive", "-": "negative"}[c.Sign]}
	}
	if g := e.Values.BestGravity(); g != nil {
		v.SG = &jsonValue{rounded(g.V, 3), roundedU(g.U)}
	}
	return &v
}

// byPlace are the values of other places than the best one's.
func (e *Examined) byPlace(best *reading.IndexValue) map[string]jsonIndex {
	places := map[string]jsonIndex{}
	for i := range e.Values.Index {
		v := &e.Values.Index[i]
		place := v.Test.Header().Place
		if place != "" && place != best.Test.Header().Place && v.Test.Header().SetAside == "" {
			places[place] = indexJSON(v)
		}
	}
	if len(places) == 0 {
		return nil
	}
	return places
}

func indexJSON(v *reading.IndexValue) jsonIndex {
	if v.Edges == 0 {
		return jsonIndex{Over: rounded(v.Over, 4)}
	}
	j := jsonIndex{Low: rounded(v.Low, 4), High: rounded(v.High, 4), U: roundedU(v.U)}
	if v.Edges == 1 {
		j.Edges = 1
	}
	return j
}

func (e *Examined) jsonWeight() *jsonWeight {
	w := e.Weight
	j := jsonWeight{Measured: rounded(w.Measured, 3), MeasuredU: rounded(w.MeasuredU, 4), ImpliedSG: rounded(w.ImpliedSG.V, 2), None: w.NoEstimate}
	if w.Estimate != nil {
		c := w.Estimate.Chosen
		j.Estimated, j.Low, j.High, j.Method = rounded(c.Carats.Value, 2), rounded(c.Low, 2), rounded(c.High, 2), string(c.Method)+": "+c.Basis.String()
		if w.Estimate.Count > 1 {
			j.Each, j.Count = rounded(w.Estimate.Each.Value, 3), w.Estimate.Count
		}
	}
	if j == (jsonWeight{}) {
		return nil
	}
	return &j
}

// roundedU rounds an uncertainty to three decimals, or to two significant digits
// where those would make it nothing.
func roundedU(u float64) float64 {
	if u <= 0 || u >= 0.0005 {
		return rounded(u, 3)
	}
	return rounded(u, 1-int(math.Floor(math.Log10(u))))
}

// rounded rounds half away from zero; the small push keeps decimal ties such
// as 1.76125 from falling down by binary rounding.
func rounded(v float64, decimals int) float64 {
	p := math.Pow10(decimals)
	return math.Round(v*p+math.Copysign(1e-7, v)) / p
}
