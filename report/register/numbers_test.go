package register

import (
	"encoding/csv"
	"errors"
	"fmt"
	"os"
	"strings"
	"testing"
)

// checkRows returns the worked examples by their input column.
// Source: ISO/IEC 7064:2003 MOD 97-10, see testdata/README.md.
func checkRows(t *testing.T) map[string]string {
	t.Helper()
	f, err := os.Open("testdata/check-mod-97-10.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	expected := map[string]string{}
	for _, row := range rows[1:] {
		expected[row[1]] = row[2]
	}
	return expected
}

func TestCheckDigitsAgainstWorkedExamples(t *testing.T) {
	rows := checkRows(t)
	used := 0
	want := func(input string) string {
		v, ok := rows[input]
		if !ok {
			t.Fatalf("no worked example %q", input)
		}
		used++
		return v
	}
	for _, digits := range []string{"794", "2024000123"} {
		if got, want := checkDigits(digits), want(digits); got != want {
			t.Errorf("check digits of %s are %s, want %s", digits, got, want)
		}
	}
	if got, want := fmt.Sprint(remainder("79444")), want("verify 79444: remainder of division by 97"); got != want {
		t.Errorf("79444 leaves %s, want %s", got, want)
	}
	if v := want("verify 0079444 (two zeros put in front)"); strings.HasPrefix(v, "valid") != checkDigitsFit("0079444") {
		t.Errorf("0079444 fits: %v, want %s", checkDigitsFit("0079444"), v)
	}
	const iban = "WEST12345698765432GB"
	if got, want := checkDigits(lettersAsNumbers(iban)), want(iban+" (A=10...Z=35)"); got != want {
		t.Errorf("check digits of %s are %s, want %s", iban, got, want)
	}
	missed := 0
	for body := range 10_000 {
		digits := fmt.Sprintf("%04d", body)
		missed += missedSlips(digits + checkDigits(digits))
	}
	if want := want("all 4-digit bodies: single wrong digit or neighbour swap missed"); fmt.Sprint(missed) != want {
		t.Errorf("%d slips missed, want %s", missed, want)
	}
	if used != len(rows) {
		t.Errorf("%d of %d worked examples were checked", used, len(rows))
	}
}

// TestSlipsInReportNumbers does the same for numbers of the length in use.
func TestSlipsInReportNumbers(t *testing.T) {
	for _, year := range []int{1999, 2026, 2099, 9999} {
		for _, ordinal := range []int{1, 10, 97, 123456, 900009, maxOrdinal} {
			n, err := NewNumber("HL", year, ordinal)
			if err != nil {
				t.Fatal(err)
			}
			if missed := missedSlips(n.digits() + n.CheckDigits()); missed != 0 {
				t.Errorf("%s: %d slips missed", n, missed)
			}
		}
	}
}

// missedSlips counts the single wrong digits and neighbour swaps that leave a
// valid string valid.
func missedSlips(valid string) int {
	missed := 0
	try := func(b []byte) {
		if string(b) != valid && checkDigitsFit(string(b)) {
			missed++
		}
	}
	for i := range valid {
		for d := byte('0'); d <= '9'; d++ {
			b := []byte(valid)
			b[i] = d
			try(b)
		}
		if i > 0 {
			b := []byte(valid)
			b[i-1], b[i] = b[i], b[i-1]
			try(b)
		}
	}
	return missed
}

// lettersAsNumbers writes A as 10 to Z as 35 (ISO 13616).
func lettersAsNumbers(s string) string {
	var b strings.Builder
	for _, c := range s {
		if c >= 'A' {
			fmt.Fprint(&b, c-'A'+10)
		} else {
			b.WriteRune(c)
		}
	}
	return b.String()
}

func TestParseNumber(t *testing.T) {
	n, err := NewNumber("HL", 2024, 123)
	if err != nil {
		t.Fatal(err)
	}
	if got, want := n.String(), "HL-2024-000123-06"; got != want {
		t.Fatalf("printed %s, want %s: check digits by the worked example 2024000123", got, want)
	}
	for _, row := range []struct{ name, in, why string }{
		{"printed", "HL-2024-000123-06", ""},
		{"small letters", "hl-2024-000123-06", "typed in haste"},
		{"spaces around", "  HL-2024-000123-06\n", "pasted"},
		{"dashes", "HL–2024‑000123‐06", "a word processor put dashes for hyphens"},
	} {
		if got, err := ParseNumber(row.in); err != nil || got != n {
			t.Errorf("%s: got %v, %v, want %v: %s", row.name, got, err, n, row.why)
		}
	}
	for _, row := range []struct{ name, in, message string }{
		{"wrong digit", "HL-2024-000124-06", "the check digits do not fit"},
		{"swap", "HL-2024-000132-06", "the check digits do not fit"},
		{"wrong year", "HL-2025-000123-06", "the check digits do not fit"},
		{"short number", "HL-2024-123-06", `number: "123" is not 6 digits`},
		{"letters", "HL-2024-OOO123-06", `number: "OOO123" is not 6 digits`},
		{"year", "HL-24-000123-06", `year: "24" is not 4 digits`},
		{"check digits", "HL-2024-000123-6", `check digits: "6" is not 2 digits`},
		{"no prefix", "2024-000123-06", "expected prefix-year-number-check"},
		{"empty prefix", "-2024-000123-06", `prefix "" is not of 1 to 8 characters`},
		{"digit first", "4L-2024-000123-06", "a letter first"},
		{"empty", "", "expected prefix-year-number-check"},
		{"place zero", "HL-2024-000000-" + checkDigits("2024000000"), "starts at 1"},
		{"other digits", "HL-2024-00012٣-06", "is not 6 digits"},
	} {
		_, err := ParseNumber(row.in)
		if !errors.Is(err, ErrNumber) || !strings.Contains(err.Error(), row.message) {
			t.Errorf("%s: %q: got %v, want %q", row.name, row.in, err, row.message)
		}
	}
}

func TestNumberLimits(t *testing.T) {
	for _, row := range []struct {
		name          string
		prefix        string
		year, ordinal int
		want          error
	}{
		{"last of a year", "A", 2026, 999_999, nil},
		{"beyond it", "A", 2026, 1_000_000, ErrSeriesFull},
		{"year of five digits", "A", 10_000, 1, ErrNumber},
		{"long prefix", "ABCDEFGHI", 2026, 1, ErrNumber},
		{"prefix with a dash", "H-L", 2026, 1, ErrNumber},
		{"prefix that leaves the folder", "../A", 2026, 1, ErrNumber},
	} {
		if _, err := NewNumber(row.prefix, row.year, row.ordinal); !errors.Is(err, row.want) {
			t.Errorf("%s: got %v, want %v", row.name, err, row.want)
		}
	}
}

func FuzzParseNumber(f *testing.F) {
	f.Add("HL-2024-000123-06")
	f.Add("hl–2024-000123-07")
	f.Fuzz(func(t *testing.T, s string) {
		n, err := ParseNumber(s)
		if err != nil {
			return
		}
		if again, err := ParseNumber(n.String()); err != nil || again != n {
			t.Errorf("%q printed as %s reads as %v, %v", s, n, again, err)
		}
	})
}

func ExampleNumber() {
	n, _ := NewNumber("HL", 2026, 1)
	fmt.Println(n)
	_, err := ParseNumber("HL-2026-000002-16")
	fmt.Println(err)
	// Output:
	// HL-2026-000001-16
	// not a report number: "HL-2026-000002-16": the check digits do not fit: a digit is wrong or two are swapped
}
