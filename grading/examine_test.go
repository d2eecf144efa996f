package grading_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"testing"
	"time"

	"stonewrit/grading"
	"stonewrit/grading/stone"
)

func examine(t testing.TB, tables *grading.Tables, name string) *grading.Examined {
	t.Helper()
	src, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	s, problems := stone.Read(name, src, tables.Gems)
	if problems.Has(stone.Error) {
		t.Fatalf("%s: %+v", name, problems)
	}
	var bench *stone.Bench
	if src, err := os.ReadFile(filepath.Join(filepath.Dir(name), "bench.yaml")); err == nil {
		if bench, problems = stone.ReadBench("bench.yaml", src, tables.Gems); problems.Has(stone.Error) {
			t.Fatalf("bench: %+v", problems)
		}
	}
	return tables.Examine(s, bench, today)
}

func load(t testing.TB) *grading.Tables {
	t.Helper()
	tables, err := grading.Load()
	if err != nil {
		t.Fatal(err)
	}
	return tables
}

// The stone file of the contract gives the figures that the contract prints
// for it. The weight's interval follows the shape factor's spread.
func TestContractExample(t *testing.T) {
	tables := load(t)
	e := examine(t, tables, "testdata/contract/hl-0412.yaml")
	line, err := e.JSON(nil)
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("%s", line)
	var got struct {
		Claims map[string]struct{ Standing string }
		Values struct {
			RI            struct{ Low, High, U float64 }
			Birefringence struct{ Value, U float64 }
			Optic         struct{ Character, Sign string }
			SG            struct{ Value, U float64 }
		}
		Weight struct {
			Measured  float64 `json:"measured_ct"`
			Estimated float64 `json:"estimated_ct"`
			Low       float64 `json:"low_ct"`
			High      float64 `json:"high_ct"`
			ImpliedSG float64 `json:"implied_sg"`
		}
	}
	if err := json.Unmarshal(line, &got); err != nil {
		t.Fatal(err)
	}
	if s := got.Claims["species"].Standing; s != "supported" {
		t.Errorf("species is %s, want supported", s)
	}
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"ri.low", got.Values.RI.Low, 1.7613},
		{"ri.high", got.Values.RI.High, 1.7693},
		{"ri.u", got.Values.RI.U, 0.001},
		{"birefringence", got.Values.Birefringence.Value, 0.0080},
		{"birefringence.u", got.Values.Birefringence.U, 0.001},
		{"sg", got.Values.SG.Value, 3.993},
		{"sg.u", got.Values.SG.U, 0.016},
		{"measured_ct", got.Weight.Measured, 1.52},
		{"estimated_ct", got.Weight.Estimated, 1.49},
		{"low_ct", got.Weight.Low, 1.40},
		{"high_ct", got.Weight.High, 1.58},
		{"implied_sg", got.Weight.ImpliedSG, 4.09},
	} {
		if c.got != c.want {
			t.Errorf("%s = %v, want %v as the contract prints", c.name, c.got, c.want)
		}
	}
	if o := got.Values.Optic; o.Character != "uniaxial" || o.Sign != "negative" {
		t.Errorf("optic = %+v, want uniaxial negative", o)
	}
}

var today = time.Date(2026, 11, 1, 0, 0, 0, 0, time.UTC)
