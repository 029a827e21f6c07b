#include "dartwright/files/json_tree.hpp"

#include <rapidjson/reader.h>

#include <algorithm>
#include <charconv>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <map>
#include <new>
#include <nlohmann/json.hpp>
#include <optional>
#include <utility>

#include "dartwright/files/syntax_problem.hpp"
#include "dartwright/words/quoted.hpp"
#include "dartwright/words/utf8.hpp"
#include "dartwright/words/written_number.hpp"

namespace dartwright {
namespace {

using nlohmann::json;
using Kind = JsonNode::Kind;

/// Numbers too large for a double are read as this, and refused for their size, so that one of them does
/// not hide the other problems of the file.
constexpr const char* stand_in = "1e300";
/// Each takes another pass over the text.
constexpr std::size_t most_stand_ins = 50;

/// The bytes of a text that a message has room for, in whole characters.
std::size_t bytes_shown(std::string_view text) {
    constexpr std::size_t most_bytes = 60;
    if (text.size() <= most_bytes) return text.size();
    std::size_t shown = most_bytes;
    while ((static_cast<unsigned char>(text[shown]) & 0xC0) == 0x80) --shown;
    return shown;
}

std::string cut_short(std::string_view text) {
    const std::size_t shown = bytes_shown(text);
    return std::string(text.substr(0, shown)) + (shown < text.size() ? "..." : "");
}

struct NumberOutOfRange {
    std::size_t offset = 0;
    std::string literal;
    std::string pointer;
};
using LiteralByPointer = std::map<std::string, std::string>;

/// Builds the tree from what either way through the text tells.
class TreeBuilder {
  public:
    TreeBuilder(std::string_view text, const LiteralByPointer& literals, const std::string& what)
        : text_(text), literals_(literals), what_(what) {
        // A pattern's values are some ten letters long each, and their nodes ten times that.
        constexpr std::size_t most_at_first = std::size_t{1} << 20;
        tree.memory = std::make_unique<std::pmr::monotonic_buffer_resource>(
            std::min(10 * text.size() + sizeof(JsonNode), most_at_first));
    }

    bool null() {
        add(Kind::null);
        return true;
    }
    bool boolean(bool value) {
        add(Kind::boolean).boolean = value;
        return true;
    }
    bool whole(double value) {
        add(Kind::number).number = value;
        return true;
    }
    bool number(double value, std::string_view literal) {
        JsonNode& node = add(Kind::number);
        node.number = value;
        node.text = literal;
        if (!literals_.empty()) {
            const auto found = literals_.find(pointer_to(node));
            if (found != literals_.end()) node.text = keep(found->second);
        }
        return true;
    }
    bool text(std::string_view value) {
        add(Kind::text).text = value;
        return true;
    }
    bool key(std::string_view value) {
        key_ = value;
        return true;
    }
    bool open_object() { return open(Kind::object); }
    bool open_list() { return open(Kind::list); }
    bool close_object() {
        const JsonNode& object = *open_.back().node;
        close();
        report_repeated_keys(object);
        return true;
    }
    bool close_list() {
        close();
        return true;
    }
    std::string_view keep(std::string text) { return tree.kept.emplace_back(std::move(text)); }
    char* copied(std::string_view text) { return tree.kept.emplace_back(text).data(); }

    /// What keeps the parser from going on, where it has read up to `position`.
    void stop(std::size_t position, const std::string& token, const nlohmann::detail::exception& error) {
        const bool is_number_out_of_range = error.id == 406;
        if (is_number_out_of_range) {
            if (position >= token.size() && text_.substr(position - token.size(), token.size()) == token)
                out_of_range = NumberOutOfRange{position - token.size(), token, next_pointer()};
            // Shown only where there are too many such numbers to stand in for.
            tree.problems.push_back({tree.values, {next_pointer(), cut_short(token), "a smaller number"}});
            return;
        }
        // The parser has read the offending character, or run past the end.
        const std::size_t offset = position > 0 ? position - 1 : 0;
        tree.problems.push_back({tree.values, syntax_problem(next_pointer(), text_, offset, error.what())});
    }

    JsonTree finished() {
        tree.root = root_;
        return std::move(tree);
    }

    JsonTree tree;
    std::optional<NumberOutOfRange> out_of_range;

  private:
    struct Open {
        JsonNode* node = nullptr;
        std::size_t first = 0;  ///< of its children among those that wait
    };

    template <class Value>
    Value* allocated(std::size_t count) {
        return static_cast<Value*>(tree.memory->allocate(count * sizeof(Value), alignof(Value)));
    }
    JsonNode& add(Kind kind) {
        JsonNode& node = *new (allocated<JsonNode>(1)) JsonNode;
        node.kind = kind;
        node.order = tree.values++;
        if (!root_) root_ = &node;
        if (!open_.empty()) {
            const JsonNode& parent = *open_.back().node;
            node.parent = &parent;
            node.index = waiting_.size() - open_.back().first;
            if (parent.kind == Kind::object) node.key = std::exchange(key_, {});
            waiting_.push_back(&node);
        }
        return node;
    }
    bool open(Kind kind) {
        if (open_.size() == deepest_nesting) {
            tree.problems.push_back(
                {tree.values,
                 {next_pointer(), "brackets nested over " + std::to_string(deepest_nesting) + " deep",
                  what_}});
            return false;
        }
        JsonNode& node = add(kind);
        open_.push_back({&node, waiting_.size()});
        return true;
    }
    void close() {
        const auto [node, first] = open_.back();
        const auto begin = waiting_.begin() + static_cast<std::ptrdiff_t>(first);
        const std::size_t count = waiting_.size() - first;
        const JsonNode** const children = allocated<const JsonNode*>(count);
        std::copy(begin, waiting_.end(), children);
        node->children = JsonNodes(children, count);
        waiting_.erase(begin, waiting_.end());
        open_.pop_back();
    }
    /// Pointer of the value that would come next.
    std::string next_pointer() const {
        if (open_.empty()) return "";
        JsonNode next;
        const JsonNode& parent = *open_.back().node;
        next.parent = &parent;
        next.index = waiting_.size() - open_.back().first;
        next.key = key_;
        const bool is_between_members = parent.kind == Kind::object && key_.empty();
        return pointer_to(is_between_members ? parent : next);
    }
    void report_repeated_keys(const JsonNode& object) {
        if (object.children.size() <= few_members && !has_repeated_key(object)) return;
        std::vector<const JsonNode*> members(object.children.begin(), object.children.end());
        std::sort(members.begin(), members.end(), [](const JsonNode* a, const JsonNode* b) {
            return a->key != b->key ? a->key < b->key : a->order < b->order;
        });
        for (std::size_t i = 1; i < members.size(); ++i)
            if (members[i]->key == members[i - 1]->key)
                tree.problems.push_back(
                    {members[i]->order,
                     {pointer_to(*members[i]), "the key " + in_quotes(members[i]->key) + " again",
                      "each key once"}});
    }

    /// So many are compared each with each.
    static constexpr std::size_t few_members = 12;
    static bool has_repeated_key(const JsonNode& object) {
        for (std::size_t i = 1; i < object.children.size(); ++i)
            for (std::size_t k = 0; k < i; ++k)
                if (object.children[i]->key == object.children[k]->key) return true;
        return false;
    }

    std::string_view text_;
    const LiteralByPointer& literals_;
    const std::string& what_;
    const JsonNode* root_ = nullptr;
    std::vector<Open> open_;
    std::vector<const JsonNode*> waiting_;  ///< children of what is open, the innermost last
    std::string_view key_;
};

/// A number by its literal, as both ways have it: a whole number of 64 bits is one, so that -0 is 0; any
/// other is the double nearest to it. Nothing where that is beyond what a double holds, or too small for it.
template <class Number>
std::optional<double> value_of(std::string_view literal) {
    Number number{};
    const char* const end = literal.data() + literal.size();
    const auto read = std::from_chars(literal.data(), end, number);
    if (read.ec != std::errc() || read.ptr != end) return std::nullopt;
    return static_cast<double>(number);
}

/// The fast way through a copy of the text, in which every text and number stays where it was read. What is
/// wrong with a text it does not say.
class EventsInPlace {
  public:
    using Ch = char;
    using Size = rapidjson::SizeType;

    explicit EventsInPlace(TreeBuilder& builder) : builder_(builder) {}

    bool Null() { return builder_.null(); }
    bool Bool(bool value) { return builder_.boolean(value); }
    bool RawNumber(const char* first, Size size, bool) {
        const std::string_view literal(first, size);
        const auto whole =
            literal.front() == '-' ? value_of<std::int64_t>(literal) : value_of<std::uint64_t>(literal);
        if (whole) return builder_.whole(*whole);
        const auto number = value_of<double>(literal);
        return number && builder_.number(*number, literal);
    }
    bool String(const char* first, Size size, bool) { return builder_.text({first, size}); }
    bool Key(const char* first, Size size, bool) { return builder_.key({first, size}); }
    bool StartObject() { return builder_.open_object(); }
    bool StartArray() { return builder_.open_list(); }
    bool EndObject(Size) { return builder_.close_object(); }
    bool EndArray(Size) { return builder_.close_list(); }
    // Numbers come as they are written.
    bool Int(int) { return false; }
    bool Uint(unsigned) { return false; }
    bool Int64(std::int64_t) { return false; }
    bool Uint64(std::uint64_t) { return false; }
    bool Double(double) { return false; }

  private:
    TreeBuilder& builder_;
};

/// False where the text is not JSON, nests too deep, or has what the way with words reads otherwise: escapes
/// by number, of which half a pair passes here, and numbers that no double holds. O(n).
bool is_read_in_place(std::string_view text, TreeBuilder& builder) {
    if (text.size() >= std::numeric_limits<rapidjson::SizeType>::max() || text.find("\\u") != text.npos)
        return false;
    constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
    if (text.starts_with(byte_order_mark)) text.remove_prefix(byte_order_mark.size());
    constexpr unsigned flags = rapidjson::kParseInsituFlag | rapidjson::kParseNumbersAsStringsFlag;
    rapidjson::InsituStringStream stream(builder.copied(text));
    EventsInPlace events(builder);
    return !rapidjson::Reader().Parse<flags>(stream, events).IsError();
}

/// The way that has words for what is wrong.
class EventsWithWords : public nlohmann::json_sax<json> {
  public:
    explicit EventsWithWords(TreeBuilder& builder) : builder_(builder) {}

    bool null() override { return builder_.null(); }
    bool boolean(bool value) override { return builder_.boolean(value); }
    bool number_integer(number_integer_t value) override {
        return builder_.whole(static_cast<double>(value));
    }
    bool number_unsigned(number_unsigned_t value) override {
        return builder_.whole(static_cast<double>(value));
    }
    bool number_float(number_float_t value, const string_t& literal) override {
        return builder_.number(value, builder_.keep(literal));
    }
    bool string(string_t& value) override { return builder_.text(builder_.keep(std::move(value))); }
    bool binary(binary_t&) override { return false; }  // JSON text has none
    bool start_object(std::size_t) override { return builder_.open_object(); }
    bool start_array(std::size_t) override { return builder_.open_list(); }
    bool key(string_t& value) override { return builder_.key(builder_.keep(std::move(value))); }
    bool end_object() override { return builder_.close_object(); }
    bool end_array() override { return builder_.close_list(); }
    bool parse_error(std::size_t position, const std::string& token,
                     const nlohmann::detail::exception& error) override {
        builder_.stop(position, token, error);
        return false;
    }

  private:
    TreeBuilder& builder_;
};

/// What keeps the bytes from being text at all.
std::optional<FileProblem> trouble_with_bytes(std::string_view text, const std::string& what) {
    if (text.find_first_not_of(" \t\r\n") == text.npos)
        return FileProblem{"", text.empty() ? "an empty file" : "a file of blanks only", what};
    const bool is_utf_16 = text.substr(0, 2) == "\xFF\xFE" || text.substr(0, 2) == "\xFE\xFF";
    if (is_utf_16) return FileProblem{"", "UTF-16 text", what + " saved as UTF-8"};
    if (const auto bad = first_malformed_utf8(text))
        return FileProblem{"", "bytes that are not UTF-8 " + at_line_and_column(text, *bad), "UTF-8 text"};
    // The parser would take a zero byte for the end of the text, and miss what follows.
    if (const auto zero = text.find('\0'); zero != text.npos)
        return FileProblem{"", "a zero byte " + at_line_and_column(text, zero), "JSON"};
    return std::nullopt;
}

std::string with_stand_in(std::string_view text, const NumberOutOfRange& number) {
    std::string changed(text);
    std::string in_place = (number.literal.front() == '-' ? "-" : "") + std::string(stand_in);
    in_place.resize(std::max(in_place.size(), number.literal.size()), ' ');
    changed.replace(number.offset, number.literal.size(), in_place);
    return changed;
}

}  // namespace

const JsonNode* member(const JsonNode& object, std::string_view key) {
    for (const JsonNode* child : object.children)
        if (child->key == key) return child;
    return nullptr;
}

std::string pointer_to(const JsonNode& node) {
    std::vector<const JsonNode*> path;
    for (const JsonNode* n = &node; n->parent; n = n->parent) path.push_back(n);
    std::string pointer;
    for (auto n = path.rbegin(); n != path.rend(); ++n) {
        pointer += '/';
        if ((*n)->parent->kind == Kind::list) {
            pointer += std::to_string((*n)->index);
            continue;
        }
        for (const char c : (*n)->key) {
            if (c == '~')
                pointer += "~0";
            else if (c == '/')
                pointer += "~1";
            else if (static_cast<unsigned char>(c) < 0x20)
                pointer += '?';  // one problem stays one line
            else
                pointer += c;
        }
    }
    return pointer;
}

std::string path_in_quotes(std::string_view path) {
    return json(std::string(path)).dump(-1, ' ', false, json::error_handler_t::replace);
}

std::string in_words(const JsonNode& node) {
    switch (node.kind) {
        case Kind::null:
            return "null";
        case Kind::boolean:
            return node.boolean ? "true" : "false";
        case Kind::number:
            return node.text.empty() ? decimal(node.number) : cut_short(node.text);
        case Kind::text:
            return in_quotes(node.text);
        case Kind::object:
            return node.children.empty() ? "an empty object" : "an object";
        case Kind::list:
            break;
    }
    return node.children.empty() ? "an empty list" : "a list of " + std::to_string(node.children.size());
}

JsonTree parse_json(std::string_view text, const std::string& what) {
    if (const auto trouble = trouble_with_bytes(text, what)) {
        JsonTree none;
        none.problems.push_back({0, *trouble});
        return none;
    }
    LiteralByPointer literals;
    {
        TreeBuilder builder(text, literals, what);
        if (is_read_in_place(text, builder)) return builder.finished();
    }
    std::deque<std::string> changed;
    for (;;) {
        TreeBuilder builder(text, literals, what);
        EventsWithWords events(builder);
        const bool is_json = json::sax_parse(text.begin(), text.end(), &events);
        if (is_json || !builder.out_of_range || literals.size() == most_stand_ins)
            return is_json ? builder.finished() : std::move(builder.tree);
        literals.emplace(builder.out_of_range->pointer, builder.out_of_range->literal);
        text = changed.emplace_back(with_stand_in(text, *builder.out_of_range));
    }
}

}  // namespace dartwright
