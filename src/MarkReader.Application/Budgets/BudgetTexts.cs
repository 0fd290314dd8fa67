using MarkReader.Quantities;

namespace MarkReader.Application.Budgets;

/// <summary>The words that explain a budget, from BudgetTexts.resx.</summary>
public sealed class BudgetTexts : Texts<BudgetTexts>;
