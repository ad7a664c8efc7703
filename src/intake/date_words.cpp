#include "intake/date_words.h"

#include <algorithm>
#include <array>

namespace larderloop::intake {
namespace {

// Longer ones first where one begins another.
constexpr std::array kPhrases{
    DatePhrase{"best before end of", MarkKind::kBestBefore, true},
    DatePhrase{"best before end", MarkKind::kBestBefore, true},
    DatePhrase{"best before", MarkKind::kBestBefore, false},
    DatePhrase{"best if used before", MarkKind::kBestBefore, false},
    DatePhrase{"best if used by", MarkKind::kBestBefore, false},
    DatePhrase{"best if used or frozen by", MarkKind::kBestBefore, false},
    DatePhrase{"best by", MarkKind::kBestBefore, false},
    DatePhrase{"bbe", MarkKind::kBestBefore, true},
    DatePhrase{"bb/ma", MarkKind::kBestBefore, false},
    DatePhrase{"bb", MarkKind::kBestBefore, false},
    DatePhrase{"meilleur avant", MarkKind::kBestBefore, false},
    DatePhrase{"a consommer de preference avant fin", MarkKind::kBestBefore, true},
    DatePhrase{"a consommer de preference avant le", MarkKind::kBestBefore, false},
    DatePhrase{"mindestens haltbar bis ende", MarkKind::kBestBefore, true},
    DatePhrase{"mindestens haltbar bis", MarkKind::kBestBefore, false},
    DatePhrase{"mhd ende", MarkKind::kBestBefore, true},
    DatePhrase{"mhd", MarkKind::kBestBefore, false},
    DatePhrase{"da consumarsi preferibilmente entro fine", MarkKind::kBestBefore, true},
    DatePhrase{"da consumarsi preferibilmente entro il", MarkKind::kBestBefore, false},
    DatePhrase{"da consumarsi preferibilmente entro", MarkKind::kBestBefore, false},
    DatePhrase{"ten minste houdbaar tot einde", MarkKind::kBestBefore, true},
    DatePhrase{"ten minste houdbaar tot", MarkKind::kBestBefore, false},
    DatePhrase{"tht", MarkKind::kBestBefore, false},
    DatePhrase{"consumase preferentemente antes del fin de", MarkKind::kBestBefore, true},
    DatePhrase{"consumase preferentemente antes del", MarkKind::kBestBefore, false},
    DatePhrase{"bast fore", MarkKind::kBestBefore, false},
    DatePhrase{"use by", MarkKind::kUseBy, false},
    DatePhrase{"expiry date", MarkKind::kUseBy, false},
    DatePhrase{"expiry", MarkKind::kUseBy, false},
    DatePhrase{"expires", MarkKind::kUseBy, false},
    DatePhrase{"exp date", MarkKind::kUseBy, false},
    DatePhrase{"exp", MarkKind::kUseBy, false},
    DatePhrase{"sell by", MarkKind::kSellBy, false},
    DatePhrase{"packed on", MarkKind::kPackedOn, false},
    DatePhrase{"packed", MarkKind::kPackedOn, false},
    DatePhrase{"pkd", MarkKind::kPackedOn, false},
    DatePhrase{"emballe le", MarkKind::kPackedOn, false},
    DatePhrase{"verpackt am", MarkKind::kPackedOn, false},
    DatePhrase{"embalado", MarkKind::kPackedOn, false},
    DatePhrase{"produced on", MarkKind::kProducedOn, false},
    DatePhrase{"produced", MarkKind::kProducedOn, false},
};

constexpr std::size_t kMonths = 12;
// Per month: English, French, German, Spanish, Italian, Portuguese, Dutch, whole and short, without accents. What is the same stands once.
constexpr std::array<std::string_view, kMonths> kNames{
    " january jan janvier janv januar enero ene gennaio gen janeiro januari ",
    " february feb fevrier fevr februar febrero febbraio fevereiro fev februari ",
    " march mar mars marz marzo marco maart mrt ",
    " april apr avril avr abril abr aprile ",
    " may mai mayo maggio mag maio mei ",
    " june jun juin juni junio giugno giu junho ",
    " july jul juillet juil juli julio luglio lug julho ",
    " august aug aout agosto ago augustus ",
    " september sept sep septembre septiembre settembre set setembro ",
    " october oct octobre oktober okt octubre ottobre ott outubro out ",
    " november nov novembre noviembre novembro ",
    " december dec decembre dezember dez diciembre dic dicembre dezembro "};
constexpr std::array<std::string_view, kMonths> kCanadian{"ja", "fe", "mr", "al", "ma", "jn",
                                                          "jl", "au", "se", "oc", "no", "de"};

struct Alike {
  std::string_view from;
  std::string_view to;
};
// Latin letters with accents in their lower-case form (UTF-8), dashes, blanks, and signs for year, month, day.
constexpr std::array kAlike{
    Alike{"\u2010", "-"}, Alike{"\u2011", "-"}, Alike{"\u2012", "-"}, Alike{"\u2013", "-"}, Alike{"\u2014", "-"},
    Alike{"\u2212", "-"}, Alike{"\uFF0D", "-"}, Alike{"\uFF0F", "/"}, Alike{"\uFF0E", "."}, Alike{"\u00A0", " "},
    Alike{"\u3000", " "}, Alike{"\u202F", " "}, Alike{"年", "-"},     Alike{"月", "-"},     Alike{"日", " "},
    Alike{"년", "-"},     Alike{"월", "-"},     Alike{"일", " "},     Alike{"까지", " "},
    Alike{"à", "a"},      Alike{"á", "a"},      Alike{"â", "a"},      Alike{"ã", "a"},      Alike{"ä", "a"},
    Alike{"å", "a"},      Alike{"ç", "c"},      Alike{"è", "e"},      Alike{"é", "e"},      Alike{"ê", "e"},
    Alike{"ë", "e"},      Alike{"í", "i"},      Alike{"ï", "i"},      Alike{"ñ", "n"},      Alike{"ó", "o"},
    Alike{"ô", "o"},      Alike{"õ", "o"},      Alike{"ö", "o"},      Alike{"ú", "u"},      Alike{"û", "u"},
    Alike{"ü", "u"},      Alike{"À", "a"},      Alike{"Á", "a"},      Alike{"Â", "a"},      Alike{"Ã", "a"},
    Alike{"Ä", "a"},      Alike{"Å", "a"},      Alike{"Ç", "c"},      Alike{"È", "e"},      Alike{"É", "e"},
    Alike{"Ê", "e"},      Alike{"Ë", "e"},      Alike{"Í", "i"},      Alike{"Ï", "i"},      Alike{"Ñ", "n"},
    Alike{"Ó", "o"},      Alike{"Ô", "o"},      Alike{"Õ", "o"},      Alike{"Ö", "o"},      Alike{"Ú", "u"},
    Alike{"Û", "u"},      Alike{"Ü", "u"}};

bool begins(std::string_view text, std::string_view with) {
  return text.substr(0, with.size()) == with;
}
bool is_letter(char c) {
  return c >= 'a' && c <= 'z';
}

std::string_view without_blanks(std::string_view text) {
  while (!text.empty() && text.front() == ' ') text.remove_prefix(1);
  while (!text.empty() && text.back() == ' ') text.remove_suffix(1);
  return text;
}

// Full-width ! to ~ (U+FF01 to U+FF5E) as its plain twin; 0 for anything else.
char plain_twin(std::string_view text) {
  if (text.size() < 3 || text[0] != '\xEF') return 0;
  const auto second = static_cast<unsigned char>(text[1]);
  const auto third = static_cast<unsigned char>(text[2]);
  if (second == 0xBC && third >= 0x81) return static_cast<char>(third - 0x81 + '!');
  if (second == 0xBD && third >= 0x80 && third <= 0x9E) return static_cast<char>(third - 0x80 + '`');
  return 0;
}

}  // namespace

std::string folded_date(std::string_view text) {
  std::string out;
  const auto put = [&](char c) {
    if (c == '\t') c = ' ';
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    if (c != ' ' || (!out.empty() && out.back() != ' ')) out += c;
  };
  while (!text.empty()) {
    const auto* const alike = std::find_if(kAlike.begin(), kAlike.end(), [&](const Alike& each) { return begins(text, each.from); });
    if (alike != kAlike.end()) {
      for (const char c : alike->to) put(c);
      text.remove_prefix(alike->from.size());
    } else if (const char twin = plain_twin(text)) {
      put(twin);
      text.remove_prefix(3);
    } else {
      put(text.front());
      text.remove_prefix(1);
    }
  }
  while (!out.empty() && out.back() == ' ') out.pop_back();
  return out;
}

const DatePhrase* take_phrase(std::string_view& text) {
  // "best-before", "use-by": a hyphen between letters is a blank.
  std::string words(text);
  for (std::size_t at = 1; at + 1 < words.size(); ++at) {
    if (words[at] == '-' && is_letter(words[at - 1]) && is_letter(words[at + 1])) words[at] = ' ';
  }
  for (const DatePhrase& phrase : kPhrases) {
    if (!begins(words, phrase.words)) continue;
    std::string_view rest = text.substr(phrase.words.size());
    if (!rest.empty() && is_letter(rest.front())) continue;
    rest = without_blanks(rest);
    if (!rest.empty() && (rest.front() == ':' || rest.front() == '.')) rest = without_blanks(rest.substr(1));
    text = rest;
    return &phrase;
  }
  return nullptr;
}

std::optional<MonthWord> month_of(std::string_view word) {
  if (word.empty()) return std::nullopt;
  std::string whole = " ";
  whole.append(word).append(" ");
  for (std::size_t at = 0; at < kMonths; ++at) {
    if (kNames[at].find(whole) != std::string_view::npos) return MonthWord{static_cast<int>(at) + 1, false};
    if (kCanadian[at] == word) return MonthWord{static_cast<int>(at) + 1, true};
  }
  return std::nullopt;
}

std::string months_it_could_be(std::string_view word) {
  if (word == "jui") return "June or July (juin, juillet)";
  if (word == "lip") return "June or July";
  if (word == "lis") return "October or November";
  return {};
}

}  // namespace larderloop::intake
