package stone_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"stonewrit/grading/quantity"
	"stonewrit/grading/stone"
)

func readContract(t *testing.T) (*stone.Stone, *stone.Bench) {
	t.Helper()
	table := loadTable(t)
	bench, problems := stone.ReadBench("bench.yaml", readFile(t, "testdata/bench.yaml"), table)
	report(t, "bench.yaml", problems)
	s, problems := stone.Read("hl-0412.yaml", readFile(t, "testdata/hl-0412.yaml"), table)
	// The one warning: the laboratory report's statement is left open as prose.
	if len(problems) != 1 || problems[0].Severity != stone.Warning || problems[0].Path != "tests[15].states" {
		report(t, "hl-0412.yaml", problems)
	}
	return s, bench
}

// The example of the contract is read, and fits its bench file and the day.
func TestContractFiles(t *testing.T) {
	s, bench := readContract(t)
	report(t, "hl-0412.yaml", stone.Against(s, bench, today()))
}

// What the contract writes arrives in the record. The figures are those of the
// example, typed again.
func TestContractValues(t *testing.T) {
	s, bench := readContract(t)
	got := []any{
		s.Format, s.Reference, s.Report, s.Examined.Items[0].String(), s.Examiner, s.Mounted, s.Prepared.By.Items,
		s.Opinion.Species, s.Opinion.Treatments.Items, s.Opinion.Origin, s.Opinion.Basis,
		s.Size.Length.Items[0].V, s.Size.Length.Items[0].Decimals, s.Size.Table.V, s.Size.CrownAngle.V, s.Size.Girdle.Word, s.Size.Count,
		s.Weight.Measured.Digits(), s.Weight.Instrument, len(s.Tests),
	}
	want := []any{
		1, "HL-0412", "appraisal", "2026-10-14", "okafor", false, []string{"lint-free cloth", "alcohol wipe"},
		"corundum", []stone.TreatmentClaim{{Name: "heated"}}, "not determined", "tested",
		quantity.Millimetre(8), 2, quantity.Percent(57), quantity.Degree(34.5), "medium", 1,
		"1.520", "balance-1", 16,
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("stone (-want +got):\n%s", diff)
	}

	r := s.Tests[0].Test.(*stone.Refractometer)
	var turns [][]string
	for _, e := range r.Readings.Items {
		turns = append(turns, []string{e.Seen[0].Digits(), e.Seen[1].Digits()})
	}
	if diff := cmp.Diff([][]string{{"1.762", "1.770"}, {"1.765", "1.770"}, {"1.768", "1.770"}, {"1.764", "1.770"}}, turns); diff != "" {
		t.Errorf("turns (-want +got):\n%s", diff)
	}
	spectrum := s.Tests[4].Test.(*stone.Spectroscope)
	if b := spectrum.Bands.Items[0]; len(spectrum.Lines.Items) != 4 || b.From.V != 500 || b.To.V != 610 || spectrum.Cutoff.V != 450 {
		t.Errorf("spectrum: got %+v", spectrum)
	}
	lamp := s.Tests[5].Test.(*stone.Ultraviolet)
	if lamp.Long.Strength != "strong" || lamp.Long.Colour != "red" || lamp.Short.Strength != "weak" || !lamp.Afterglow.None {
		t.Errorf("ultraviolet: got %+v", lamp)
	}
	weighing := s.Tests[6].Test.(*stone.Gravity)
	if weighing.InAir.Items[0].Grams != 0.3040 || weighing.InWater.Items[0].Grams != 0.2281 || weighing.Water.V != 21.5 {
		t.Errorf("weighing: got %+v", weighing)
	}
	if v := s.Tests[8].Test.(*stone.Gravity).Given; v.V != 4.00 || v.U != 0.01 {
		t.Errorf("4.00 +-0.02 is a half width at 95 %%, u is half of it: got %v u %v", v.V, v.U)
	}
	for i, test := range s.Tests {
		if test.Header().Index != i {
			t.Errorf("test %d has index %d", i, test.Header().Index)
		}
	}
	if in := bench.Instruments["refractometer-1"]; in.Limit.V != 1.80 || in.Readability.Pure.V != 0.001 || in.CheckEvery.V != 30 || in.Checks[0].Reference != "quartz" {
		t.Errorf("refractometer: got %+v", in)
	}
	if in := bench.Instruments["balance-1"]; in.Readability.Mass.Grams != 0.0001 || in.Checks[0].Reading.Mass.Grams != 5.0003 {
		t.Errorf("balance: got %+v", in)
	}
}

// What is not written is told from what was looked for and not found.
func TestNoneAndAbsent(t *testing.T) {
	s, _ := readContract(t)
	if s.Opinion.Told.Given || s.Assumptions != nil {
		t.Error("absent keys count as given")
	}
	for _, text := range []string{"none", "[]"} {
		src := minimal("opinion: {species: corundum, treatments: " + text + "}\nassumptions: " + text + "\ntests:\n- {test: spectroscope, lines: " + text + "}\n")
		s, problems := stone.Read("a.yaml", []byte(src), loadTable(t))
		report(t, "a.yaml", problems)
		lines := s.Tests[0].Test.(*stone.Spectroscope).Lines
		if !s.Opinion.Treatments.Given || len(s.Opinion.Treatments.Items) != 0 || !lines.Given || len(lines.Items) != 0 || s.Assumptions == nil {
			t.Errorf("%s: got %+v, %+v, %#v", text, s.Opinion.Treatments, lines, s.Assumptions)
		}
	}
}

// minimal is the shortest stone file with more keys.
func minimal(more string) string {
	head := "stonewrit: 1\nstone: T-1\nreport: note\nexamined: 2026-10-14\nexaminer: okafor\n"
	return head + more
}
