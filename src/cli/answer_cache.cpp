#include "cli/answer_cache.h"

#include <link.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cstring>
#include <ctime>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <sstream>

namespace larderloop::cli {
namespace {

constexpr const char* kForm = "larderloop answer 1";
constexpr long long kUnsafeNanoseconds = 100'000'000;  // file times move in steps of some milliseconds

long long nanoseconds(const timespec& time) { return static_cast<long long>(time.tv_sec) * 1'000'000'000 + time.tv_nsec; }

int find_build_id(dl_phdr_info* program, std::size_t, void* out) {
  // The first one is the program itself.
  for (int index = 0; index < program->dlpi_phnum; ++index) {
    const ElfW(Phdr)& header = program->dlpi_phdr[index];
    if (header.p_type != PT_NOTE) continue;
    const char* at = reinterpret_cast<const char*>(program->dlpi_addr + header.p_vaddr);
    const char* const end = at + header.p_memsz;
    while (at + sizeof(ElfW(Nhdr)) <= end) {
      ElfW(Nhdr) note{};
      std::memcpy(&note, at, sizeof note);
      const char* name = at + sizeof note;
      const char* value = name + ((note.n_namesz + 3U) & ~3U);
      if (note.n_type == NT_GNU_BUILD_ID && note.n_namesz == 4 && std::memcmp(name, "GNU", 4) == 0) {
        auto& text = *static_cast<std::string*>(out);
        for (unsigned byte = 0; byte < note.n_descsz; ++byte) {
          const auto bits = static_cast<unsigned char>(value[byte]);
          text += "0123456789abcdef"[bits >> 4U];
          text += "0123456789abcdef"[bits & 15U];
        }
        return 1;
      }
      at = value + ((note.n_descsz + 3U) & ~3U);
    }
  }
  return 1;
}

// The lines before the body, all of which have to be the same.
std::string head_of(const std::string& book, const std::string& question) {
  const std::string seen = book_fingerprint(book);
  const std::string build = build_id();
  if (seen.empty() || build.empty()) return {};
  return std::string(kForm) + "\n" + build + "\n" + seen + "\n" + question + "\n";
}

// Takes one line off the front.
std::optional<std::string> line_of(std::string& text) {
  const std::size_t end = text.find('\n');
  if (end == std::string::npos) return std::nullopt;
  std::string line = text.substr(0, end);
  text.erase(0, end + 1);
  return line;
}

}  // namespace

std::string book_fingerprint(const std::string& book) {
  struct stat file {};
  struct stat log {};
  if (::stat(book.c_str(), &file) != 0 || !S_ISREG(file.st_mode)) return {};
  if (::stat((book + "-wal").c_str(), &log) == 0 && log.st_size > 0) return {};
  timespec now{};
  if (::clock_gettime(CLOCK_REALTIME, &now) != 0) return {};
  if (nanoseconds(now) - nanoseconds(file.st_mtim) < kUnsafeNanoseconds) return {};
  std::ostringstream text;
  text.imbue(std::locale::classic());
  text << file.st_dev << ' ' << file.st_ino << ' ' << file.st_size << ' ' << nanoseconds(file.st_mtim) << ' '
       << nanoseconds(file.st_ctim);
  return text.str();
}

std::string build_id() {
  std::string text;
  dl_iterate_phdr(find_build_id, &text);
  return text;
}

std::string AnswerCache::file_of(const std::string& book, const std::string& question) const {
  std::error_code failed;
  const std::string path = std::filesystem::absolute(book, failed).string() + "\n" + question;
  std::uint64_t hash = 14695981039346656037U;  // FNV-1a: only a name for the file, the head inside decides
  for (const char letter : path) hash = (hash ^ static_cast<unsigned char>(letter)) * 1099511628211U;
  std::ostringstream name;
  name.imbue(std::locale::classic());
  name << folder_ << "/answer-" << std::hex << hash;
  return name.str();
}

std::optional<KeptAnswer> AnswerCache::recall(
    const std::string& book, const std::string& question,
    const std::function<std::optional<Day>(const std::string&)>& today_in) const {
  if (folder_.empty()) return std::nullopt;
  std::ifstream file(file_of(book, question), std::ios::binary);
  if (!file) return std::nullopt;
  std::string text{std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
  const std::string head = head_of(book, question);
  if (head.empty() || text.compare(0, head.size(), head) != 0) return std::nullopt;
  text.erase(0, head.size());
  const auto day_text = line_of(text);
  const auto zone = line_of(text);
  const auto code = line_of(text);
  const auto size = line_of(text);
  if (!day_text || !zone || !code || !size) return std::nullopt;
  const auto day = parse_iso_day(*day_text);
  if (!day || today_in(*zone) != day || *size != std::to_string(text.size())) return std::nullopt;
  if (*code != "0" && *code != "1") return std::nullopt;
  return KeptAnswer{std::move(text), *code == "1" ? 1 : 0, *day, *zone};
}

void AnswerCache::keep(const std::string& book, const std::string& question, const KeptAnswer& answer) const {
  if (folder_.empty() || answer.zone.find('\n') != std::string::npos) return;
  const std::string head = head_of(book, question);
  if (head.empty()) return;
  std::error_code failed;
  std::filesystem::create_directories(folder_, failed);
  std::filesystem::permissions(folder_, std::filesystem::perms::owner_all, failed);
  const std::string target = file_of(book, question);
  const std::string beside = target + "." + std::to_string(::getpid());
  {
    std::ofstream file(beside, std::ios::binary | std::ios::trunc);
    file << head << iso_day(answer.day) << "\n" << answer.zone << "\n" << answer.code << "\n" << answer.body.size() << "\n"
         << answer.body;
    file.close();
    if (!file) {
      std::filesystem::remove(beside, failed);
      return;
    }
  }
  std::filesystem::rename(beside, target, failed);
  if (failed) std::filesystem::remove(beside, failed);
}

}  // namespace larderloop::cli
