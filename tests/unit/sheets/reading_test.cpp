#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <filesystem>

#include "../../support/lesson_file.h"
#include "print/sheets/reading_age.h"
#include "print/sheets/told_step.h"

namespace {

using namespace print::sheets;

// Worked example of the encyclopaedia articles on the Flesch-Kincaid tests (looked up): 13 words
// and 24 syllables come to 0.39 * 13 + 11.8 * 24 / 13 - 15.59 = 11.3 (Aus-tral-ian and rep-til-ian
// are three each, as dictionaries part them). The cat has six of each: 0.39 * 6 + 11.8 - 15.59 =
// -1.45.
TEST(ReadingAge, the_published_worked_examples) {
  const char* platypus =
      "The Australian platypus is seemingly a hybrid of a mammal and reptilian creature.";
  EXPECT_EQ(count_reading(platypus), (Counted{1, 13, 24}));
  EXPECT_NEAR(reading_grade(platypus), 11.3, 0.05);
  EXPECT_NEAR(reading_grade("The cat sat on the mat."), -1.45, 1e-9);
}

TEST(ReadingAge, syllables_of_kitchen_words) {
  const std::pair<const char*, int> words[] = {
      {"onion", 2},  {"slice", 1},    {"simmer", 2},   {"vegetable", 3}, {"boiled", 1},
      {"table", 2},  {"sieve", 1},    {"potatoes", 3}, {"grated", 2},    {"dishes", 2},
      {"oven", 2},   {"gloves", 1},   {"minutes", 2},  {"oregano", 4},   {"rinse", 1},
      {"celery", 3}, {"tomatoes", 3}, {"chicken", 2},  {"peel", 1},      {"stirring", 2}};
  for (const auto& [word, count] : words) EXPECT_EQ(syllables(word), count) << word;
}

TEST(ReadingAge, figures_and_signs) {
  EXPECT_EQ(count_reading("Bake at 200 °C for 12 min."), (Counted{1, 7, 10}));
  EXPECT_EQ(count_reading(""), Counted{});
  EXPECT_EQ(reading_grade(""), 0);
  EXPECT_EQ(count_reading("Stop! Is it hot? Yes.").sentences, 3);
}

TEST(ToldStep, a_sentence_is_cut_where_a_second_instruction_begins) {
  EXPECT_EQ(
      in_short_sentences("Peel the onion, halve it and cut thin half moons with the claw grip."),
      "Peel the onion. Halve it and cut thin half moons with the claw grip.");
  EXPECT_EQ(in_short_sentences("Wash the carrot at the sink, then peel it away from you"),
            "Wash the carrot at the sink. Then peel it away from you.");
  EXPECT_EQ(in_short_sentences("Turn the ring down; stir when your teacher calls"),
            "Turn the ring down. Stir when your teacher calls.");
}

TEST(ToldStep, what_is_one_thought_is_not_cut) {
  // Cut in two, these would say the opposite or nothing.
  for (const char* whole :
       {"With the adult beside you, warm a finger’s depth of oil.",
        "Stir in onion for two minutes, then tomatoes and beans.",
        "Never leave the pan and walk to the sink.", "Do not open the door and look at the cakes.",
        "When the water boils, add the pasta.", "Peel and dice the onion.",
        "Fry without turning the heat up, and stir slowly."})
    EXPECT_EQ(in_short_sentences(whole), whole);
}

// Every step of every demo dish. Grades of the whole text: a few words read easier than short
// sentences, and those easier than the step as written with what it is for.
TEST(ToldStep, three_levels_are_three_levels_of_reading) {
  std::string few, plain, full;
  int steps = 0;
  for (const auto& file :
       std::filesystem::directory_iterator(std::string(BENCHBELL_SOURCE_DIR) + "/demo/dishes")) {
    kitchen::Lesson lesson;
    lesson.dishes = {support::dish_file("demo/dishes/" + file.path().filename().string())};
    for (std::size_t s = 0; s < lesson.dishes[0].method.size(); ++s) {
      timeplan::Task task;
      task.dish = 0;
      task.step = static_cast<int>(s);
      few += told(lesson, task, Level::kFew) + " ";
      plain += told(lesson, task, Level::kPlain) + " ";
      full += told(lesson, task, Level::kFull) + " ";
      ++steps;
    }
  }
  EXPECT_GT(steps, 150);
  RecordProperty("few", std::to_string(reading_grade(few)));
  std::printf("reading grades of %d steps: few words %.1f, plain %.1f, full %.1f\n", steps,
              reading_grade(few), reading_grade(plain), reading_grade(full));
  EXPECT_LT(reading_grade(few), reading_grade(plain) - 0.5);
  EXPECT_LT(reading_grade(plain), reading_grade(full) - 0.5);
  EXPECT_LT(reading_grade(plain), 5);  // read at ten
}

TEST(ToldStep, no_word_is_lost_between_the_levels) {
  const auto letters_of = [](const std::string& text) {
    std::string out;
    for (const char c : text) {
      if ((c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'))
        out += static_cast<char>(c >= 'A' && c <= 'Z' ? c - 'A' + 'a' : c);
    }
    return out;
  };
  const std::string whole =
      "Scrape the onion and spices into the lentils, stir, taste and season; take the pan off the "
      "ring.";
  EXPECT_EQ(letters_of(in_short_sentences(whole)), letters_of(whole));
}

}  // namespace
